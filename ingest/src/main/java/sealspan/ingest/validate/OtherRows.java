package sealspan.ingest.validate;

import sealspan.event.AssemblyRemoved;
import sealspan.event.GaugeCalibrated;
import sealspan.event.InspectionPerformed;
import sealspan.event.JobCosted;
import sealspan.event.Moment;
import sealspan.event.ServiceStateChanged;
import sealspan.event.TesterCertified;
import sealspan.event.Visit;
import sealspan.event.VisitAttempted;
import sealspan.event.WaterDisturbed;
import sealspan.event.WaterSampled;
import sealspan.ingest.validate.Problem.Fault;

/** All other events from rows. */
final class OtherRows {
  private static final Column REPORT_NUMBER = Columns.named("report_number");
  private static final Column REMARKS = Columns.named("remarks");
  private static final Column TESTER = Columns.named("tester_id");
  private static final Column CERTIFICATE = Columns.named("certificate_number");
  private static final Column GAUGE = Columns.named("gauge_id");
  private static final Column ZONE_ID = Columns.named("zone_id");
  private static final Column LATITUDE = Columns.named("latitude");
  private static final Column LONGITUDE = Columns.named("longitude");
  private static final Column ATTEMPT_REASON = Columns.named("attempt_reason");
  private static final Column INSPECTION_KIND = Columns.named("inspection_kind");
  private static final Column INSPECTION_OUTCOME = Columns.named("inspection_outcome");
  private static final Column FINDINGS = Columns.named("findings");
  private static final Column SEPARATION = Columns.named("separation_in");
  private static final Column SUPPLY_PIPE = Columns.named("supply_pipe_in");
  private static final Column INSPECTOR = Columns.named("inspector_id");
  private static final Column SERVICE_STATE = Columns.named("service_state");
  private static final Column REMOVAL_REASON = Columns.named("removal_reason");
  private static final Column CONTRACT = Columns.named("contract_id");
  private static final Column COVERED = Columns.named("covered");
  private static final Column LABOUR = Columns.named("labour");
  private static final Column TRAVEL = Columns.named("travel");
  private static final Column PARTS_COST = Columns.named("parts_cost");
  private static final Column INVOICED = Columns.named("invoiced");
  private static final Column DISTURBANCE = Columns.named("disturbance");
  private static final Column DISTURBANCE_ID = Columns.named("disturbance_id");
  private static final Column UNTIL = Columns.named("until");
  private static final Column VALID_UNTIL = Columns.named("valid_until");
  private static final Column ERROR_AS_FOUND = Columns.named("error_as_found_psid");
  private static final Column ERROR_AS_LEFT = Columns.named("error_as_left_psid");
  private static final Column LABORATORY = Columns.named("laboratory_id");
  private static final Column POTABLE_ONLY = Columns.named("potable_only");
  private static final Column AUTHORITY = Columns.named("authority");
  private static final Column REGISTERED_WITH = Columns.named("registered_with");
  private static final Column FIRM = Columns.named("firm_id");
  private static final Column STATION = Columns.named("station_id");
  private static final Column ACTIVITY = Columns.named("activity_id");
  private static final Column RESULT = Columns.named("result_id");
  private static final Column CHARACTERISTIC = Columns.named("characteristic");
  private static final Column FRACTION = Columns.named("fraction");
  private static final Column VALUE = Columns.named("value");
  private static final Column VALUE_UNIT = Columns.named("value_unit");
  private static final Column DETECTION = Columns.named("detection");
  private static final Column DETECTION_LIMIT = Columns.named("detection_limit");
  private static final Column DETECTION_LIMIT_UNIT = Columns.named("detection_limit_unit");
  private static final Column ANALYSIS_METHOD = Columns.named("analysis_method");
  private static final Column SAMPLE_STATUS = Columns.named("sample_status");
  private static final Column PROVIDER = Columns.named("provider_id");

  private OtherRows() {}

  static InspectionPerformed inspection(Fields row, String assemblyId, Moment when, Visit visit) {
    row.need(INSPECTION_KIND, "Say what was inspected, such as air_gap.");
    return new InspectionPerformed(
        assemblyId,
        when,
        visit,
        row.text(REPORT_NUMBER),
        row.code(INSPECTION_KIND, Codes.INSPECTION_KIND),
        row.code(INSPECTION_OUTCOME, Codes.INSPECTION_OUTCOME),
        row.list(FINDINGS),
        row.quantityFromZero(SEPARATION),
        row.quantityFromZero(SUPPLY_PIPE),
        row.text(INSPECTOR));
  }

  static VisitAttempted attempt(Fields row, String assemblyId, Moment when, String visitId) {
    row.need(ATTEMPT_REASON, "Say why no test could be made, such as no_access.");
    return new VisitAttempted(
        assemblyId,
        when,
        visitId,
        row.code(ATTEMPT_REASON, Codes.ATTEMPT_REASON),
        row.text(TESTER),
        row.text(REMARKS));
  }

  static ServiceStateChanged service(Fields row, String assemblyId, Moment when) {
    row.need(SERVICE_STATE, "Say which state holds from that day, such as winterised.");
    return new ServiceStateChanged(
        assemblyId, when, row.code(SERVICE_STATE, Codes.SERVICE_STATE), row.text(REMARKS));
  }

  static AssemblyRemoved removal(Fields row, String assemblyId, Moment when) {
    return new AssemblyRemoved(
        assemblyId, when, row.code(REMOVAL_REASON, Codes.REMOVAL_REASON), row.text(REMARKS));
  }

  static JobCosted job(Fields row, String assemblyId, Moment when, String visitId) {
    return new JobCosted(
        assemblyId,
        when,
        visitId,
        row.text(CONTRACT),
        row.yesNo(COVERED),
        row.money(LABOUR),
        row.money(TRAVEL),
        row.money(PARTS_COST),
        row.money(INVOICED));
  }

  static WaterDisturbed disturbance(Fields row, Moment when) {
    var until = row.pastDay(UNTIL);
    if (until != null && when != null && until.isBefore(when.day())) {
      row.add(
          UNTIL,
          Fault.CONTRADICTION,
          "It ended on " + until + ", before it began on " + when.day() + ".",
          "Check both days.");
    }
    row.need(DISTURBANCE, "Say what happened, such as main_break.");
    return new WaterDisturbed(
        row.need(ZONE_ID, "Name the water zone that was disturbed."),
        when,
        until,
        row.text(DISTURBANCE_ID),
        row.code(DISTURBANCE, Codes.DISTURBANCE),
        row.decimal(LATITUDE, -90, 90),
        row.decimal(LONGITUDE, -180, 180),
        row.text(REMARKS));
  }

  static GaugeCalibrated calibration(Fields row, Moment when) {
    return new GaugeCalibrated(
        row.need(GAUGE, "Name the gauge that was calibrated."),
        when,
        row.validityDay(VALID_UNTIL),
        row.quantity(ERROR_AS_FOUND),
        row.quantity(ERROR_AS_LEFT),
        row.text(LABORATORY),
        row.yesNo(POTABLE_ONLY));
  }

  static TesterCertified certificate(Fields row, Moment when) {
    return new TesterCertified(
        row.need(TESTER, "Name the tester whose certificate it is, by id."),
        when,
        row.validityDay(VALID_UNTIL),
        row.text(CERTIFICATE),
        row.text(AUTHORITY),
        row.text(REGISTERED_WITH),
        row.text(FIRM));
  }

  static WaterSampled sample(Fields row, Moment when) {
    WaterSampled.Detection detection = row.code(DETECTION, Codes.DETECTION);
    boolean measured =
        detection == null && row.has(VALUE) || detection == WaterSampled.Detection.MEASURED;
    if (detection == null && !row.has(VALUE)) {
      row.add(
          VALUE,
          Fault.MISSING,
          "It is empty, and nothing says that the substance was not detected.",
          "Give the number, or write not_detected under detection.");
    } else if (detection == WaterSampled.Detection.MEASURED && !row.has(VALUE)) {
      row.need(VALUE, "A measured result has a number.");
    } else if (!measured && row.has(VALUE)) {
      row.add(
          VALUE,
          Fault.CONTRADICTION,
          "It holds a number, and the substance is said not to have been measured.",
          "Leave the value empty, and give the limit under detection_limit.");
    }
    row.need(CHARACTERISTIC, "Say what was measured, such as Iron.");
    return new WaterSampled(
        row.need(ZONE_ID, "Name the water zone of the sample."),
        when,
        row.text(STATION),
        row.text(ACTIVITY),
        row.text(RESULT),
        row.text(CHARACTERISTIC),
        row.text(FRACTION),
        measured ? row.number(VALUE) : null,
        row.text(VALUE_UNIT),
        measured ? WaterSampled.Detection.MEASURED : detection,
        row.number(DETECTION_LIMIT),
        row.text(DETECTION_LIMIT_UNIT),
        row.text(ANALYSIS_METHOD),
        row.text(SAMPLE_STATUS),
        row.text(PROVIDER));
  }
}
