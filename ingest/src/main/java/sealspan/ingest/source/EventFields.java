package sealspan.ingest.source;

import java.util.Map;
import java.util.Objects;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyRemoved;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.GaugeCalibrated;
import sealspan.event.InspectionPerformed;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.event.Moment;
import sealspan.event.NaturalKey;
import sealspan.event.RepairPerformed;
import sealspan.event.ServiceStateChanged;
import sealspan.event.SiteDescribed;
import sealspan.event.TestPerformed;
import sealspan.event.TesterCertified;
import sealspan.event.VisitAttempted;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;

/**
 * An event as cells of the documented columns, one row per event: the other way round from an
 * import. Reading the cells back under the same source gives the same event.
 */
public final class EventFields {
  private EventFields() {}

  /**
   * The cells of an event by column, without those that were not recorded.
   *
   * @throws IllegalArgumentException where no columns tell all of it
   */
  public static Map<String, String> of(LoggedEvent logged) {
    FieldMap fields = new FieldMap();
    AssemblyEvent event = logged.event();
    fields.text("event", kind(event));
    if (!logged.id().equals(NaturalKey.idOf(logged.source(), event))) {
      fields.text("event_id", logged.id());
    }
    if (logged.reportedAt() != null
        && logged.reportedOrigin() == LoggedEvent.ReportedOrigin.GIVEN) {
      fields.text("reported_on", logged.reportedAt().toString());
    }
    if (event instanceof EventCorrected corrected) {
      decision(
          corrected.targetEventId(), corrected.when(), corrected.by(), corrected.why(), fields);
      event(corrected.replacement(), fields);
    } else {
      event(event, fields);
    }
    return fields.cells();
  }

  private static String kind(AssemblyEvent event) {
    if (event instanceof EventCorrected corrected) {
      return kind(corrected.replacement());
    }
    return switch (event.getClass().getSimpleName()) {
      case "SiteDescribed" -> "site";
      case "AssemblyInstalled" -> "assembly";
      case "AssemblyChanged" -> "change";
      case "TestPerformed" -> "test";
      case "RepairPerformed" -> "repair";
      case "InspectionPerformed" -> "inspection";
      case "VisitAttempted" -> "attempt";
      case "ServiceStateChanged" -> "service";
      case "AssemblyRemoved" -> "removal";
      case "JobCosted" -> "job";
      case "WaterSampled" -> "sample";
      case "WaterDisturbed" -> "disturbance";
      case "GaugeCalibrated" -> "calibration";
      case "TesterCertified" -> "certificate";
      case "EventVoided" -> "void";
      default -> throw new IllegalArgumentException("No row tells of a " + event.getClass());
    };
  }

  private static void event(AssemblyEvent event, FieldMap fields) {
    if (event instanceof TestPerformed test) {
      RoundFields.test(test, fields);
    } else if (event instanceof RepairPerformed repair) {
      RoundFields.repair(repair, fields);
    } else if (event instanceof SiteDescribed site) {
      site(site, fields);
    } else if (event instanceof AssemblyInstalled installed) {
      installed(installed, fields);
    } else if (event instanceof WaterSampled sample) {
      sample(sample, fields);
    } else if (event instanceof EventVoided voiding) {
      fields.text("about", voiding.about().key());
      decision(voiding.targetEventId(), voiding.when(), voiding.by(), voiding.why(), fields);
    } else {
      other(event, fields);
    }
  }

  private static void decision(String target, Moment when, String by, String why, FieldMap fields) {
    String time = "";
    if (when.minuteOfDay() != null) {
      int minute = when.minuteOfDay();
      time = String.format(" %02d:%02d", minute / 60, minute % 60);
    }
    fields
        .text("corrects_event_id", target)
        .text("corrected_on", when.day() + time)
        .text("time_zone", when.timeZone())
        .text("corrected_by", by)
        .text("corrected_why", why);
  }

  private static void site(SiteDescribed site, FieldMap fields) {
    if (!Objects.equals(site.when().timeZone(), site.timeZone())) {
      throw new IllegalArgumentException("A row has one time zone, that of its site.");
    }
    fields
        .moment(site.when())
        .text("site_id", site.siteId())
        .text("position_id", site.positionId())
        .text("premises", site.label())
        .text("meter_id", site.meterId())
        .text("account_id", site.accountId())
        .text("owner_id", site.ownerId())
        .decimal("latitude", site.latitude())
        .decimal("longitude", site.longitude())
        .decimal("elevation_m", site.elevationM())
        .text("zone_id", site.zoneId())
        .text("jurisdiction", site.jurisdiction())
        .text("time_zone", site.timeZone())
        .code("hazard", site.hazard())
        .code("protection", site.protection())
        .code("use", site.use())
        .text("access", site.access())
        .yesNo("vault", site.vault());
  }

  private static void installed(AssemblyInstalled unit, FieldMap fields) {
    if (unit.when().minuteOfDay() != null) {
      throw new IllegalArgumentException("No column tells the time of day of an installation.");
    }
    boolean known = unit.dayMeaning() == AssemblyInstalled.DayMeaning.INSTALLED;
    fields
        .text("assembly_id", unit.assemblyId())
        .day(known ? "install_date" : "known_since", unit.when().day())
        .text("time_zone", unit.when().timeZone())
        .text("site_id", unit.siteId())
        .text("position_id", unit.positionId())
        .code("type", unit.type())
        .text("maker", unit.maker())
        .text("model", unit.model())
        .text("serial", unit.serial())
        .text("bypass_serial", unit.bypassSerial())
        .text("size", unit.sizeInch())
        .text("orientation", unit.orientation())
        .day("manufactured_on", unit.manufacturedOn())
        .day("in_service_since", unit.inServiceSince())
        .yesNo("approved", unit.approved())
        .text("replaces_assembly_id", unit.replacesAssemblyId())
        .text("parent_assembly_id", unit.parentAssemblyId())
        .text("parallel_installation_id", unit.parallelInstallationId())
        .whole("mainline_count", unit.mainlineCount());
  }

  private static void sample(WaterSampled sample, FieldMap fields) {
    fields
        .moment(sample.when())
        .text("zone_id", sample.zoneId())
        .text("station_id", sample.stationId())
        .text("activity_id", sample.activityId())
        .text("result_id", sample.resultId())
        .text("characteristic", sample.characteristic())
        .text("fraction", sample.fraction())
        .text("value", sample.value())
        .text("value_unit", sample.unit())
        .code("detection", sample.detection())
        .text("detection_limit", sample.detectionLimit())
        .text("detection_limit_unit", sample.detectionLimitUnit())
        .text("analysis_method", sample.methodId())
        .text("sample_status", sample.status())
        .text("provider_id", sample.providerId());
  }

  private static void other(AssemblyEvent event, FieldMap fields) {
    fields.moment(event.when());
    if (event instanceof AssemblyChanged change) {
      fields
          .text("assembly_id", change.assemblyId())
          .text("position_id", change.positionId())
          .text("zone_id", change.zoneId())
          .code("hazard", change.hazard())
          .code("use", change.use())
          .text("owner_id", change.ownerId())
          .text("orientation", change.orientation())
          .text("site_change", change.siteChange())
          .text("remarks", change.remarks());
    } else if (event instanceof InspectionPerformed inspection) {
      fields
          .text("assembly_id", inspection.assemblyId())
          .visit(inspection.visit(), 1)
          .text("report_number", inspection.reportNumber())
          .code("inspection_kind", inspection.kind())
          .code("inspection_outcome", inspection.outcome())
          .list("findings", inspection.findings())
          .quantity("separation", inspection.separation())
          .quantity("supply_pipe", inspection.supplyPipeDiameter())
          .text("inspector_id", inspection.inspectorId());
    } else if (event instanceof VisitAttempted attempt) {
      fields
          .text("assembly_id", attempt.assemblyId())
          .text("visit_id", attempt.visitId())
          .code("attempt_reason", attempt.reason())
          .text("tester_id", attempt.testerId())
          .text("remarks", attempt.remarks());
    } else if (event instanceof ServiceStateChanged service) {
      fields
          .text("assembly_id", service.assemblyId())
          .code("service_state", service.state())
          .text("remarks", service.remarks());
    } else if (event instanceof AssemblyRemoved removed) {
      fields
          .text("assembly_id", removed.assemblyId())
          .code("removal_reason", removed.reason())
          .text("remarks", removed.remarks());
    } else if (event instanceof JobCosted job) {
      fields
          .text("assembly_id", job.assemblyId())
          .text("visit_id", job.visitId())
          .text("contract_id", job.contractId())
          .yesNo("covered", job.covered())
          .money("labour", job.labour())
          .money("travel", job.travel())
          .money("parts_cost", job.parts())
          .money("invoiced", job.invoiced());
    } else {
      ofThings(event, fields);
    }
  }

  /** Events of zones, gauges and testers. */
  private static void ofThings(AssemblyEvent event, FieldMap fields) {
    if (event instanceof WaterDisturbed disturbed) {
      fields
          .text("zone_id", disturbed.zoneId())
          .code("disturbance", disturbed.kind())
          .text("disturbance_id", disturbed.disturbanceId())
          .day("until", disturbed.until())
          .decimal("latitude", disturbed.latitude())
          .decimal("longitude", disturbed.longitude())
          .text("remarks", disturbed.remarks());
    } else if (event instanceof GaugeCalibrated calibrated) {
      fields
          .text("gauge_id", calibrated.gaugeId())
          .day("valid_until", calibrated.validUntil())
          .quantity("error_as_found", calibrated.errorAsFound())
          .quantity("error_as_left", calibrated.errorAsLeft())
          .text("laboratory_id", calibrated.laboratoryId())
          .yesNo("potable_only", calibrated.potableOnly());
    } else if (event instanceof TesterCertified certified) {
      fields
          .text("tester_id", certified.testerId())
          .day("valid_until", certified.validUntil())
          .text("certificate_number", certified.certificateNumber())
          .text("authority", certified.authority())
          .text("registered_with", certified.registeredWith())
          .text("firm_id", certified.firmId());
    }
  }
}
