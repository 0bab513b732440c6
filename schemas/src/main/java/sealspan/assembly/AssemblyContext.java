package sealspan.assembly;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.event.AssemblyChanged;
import sealspan.event.AssemblyEvent;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyType;
import sealspan.event.GaugeCalibrated;
import sealspan.event.SiteDescribed;
import sealspan.event.TesterCertified;

/**
 * What was known of an assembly, its site, gauges and testers as of a day. Each attribute is the
 * last that was recorded by that day; before the first description the first one is taken, because
 * premises do not change for want of a description.
 */
final class AssemblyContext {
  private final List<AssemblyInstalled> installations = new ArrayList<>(2);
  private final List<AssemblyEvent> descriptions = new ArrayList<>(4);
  private final Map<String, List<GaugeCalibrated>> calibrations = new HashMap<>();
  private final Map<String, List<TesterCertified>> certificates = new HashMap<>();

  /**
   * The context of one assembly.
   *
   * @param own its own events in canonical order
   * @param others the standing events of other subjects, in any order
   */
  AssemblyContext(List<StandingEvent> own, List<StandingEvent> others) {
    List<StandingEvent> described = new ArrayList<>(4);
    for (StandingEvent event : own) {
      if (event.event() instanceof AssemblyInstalled installed) {
        installations.add(installed);
      } else if (event.event() instanceof AssemblyChanged) {
        described.add(event);
      }
    }
    for (StandingEvent event : others) {
      if (event.event() instanceof SiteDescribed) {
        described.add(event);
      }
    }
    described.sort(StandingEvents.inTime());
    described.forEach(event -> descriptions.add(event.event()));
    List<StandingEvent> dated = new ArrayList<>(others);
    dated.sort(StandingEvents.inTime());
    for (StandingEvent event : dated) {
      if (event.event() instanceof GaugeCalibrated calibration) {
        calibrations
            .computeIfAbsent(calibration.gaugeId(), id -> new ArrayList<>(4))
            .add(calibration);
      } else if (event.event() instanceof TesterCertified certificate) {
        certificates
            .computeIfAbsent(certificate.testerId(), id -> new ArrayList<>(4))
            .add(certificate);
      }
    }
  }

  /** The installations in order. */
  List<AssemblyInstalled> installations() {
    return installations;
  }

  /** The installation that holds on a day, or the first before any; null for none. */
  AssemblyInstalled installation(LocalDate day) {
    AssemblyInstalled found = null;
    for (AssemblyInstalled installed : installations) {
      if (found == null || !installed.when().day().isAfter(day)) {
        found = installed;
      }
    }
    return found;
  }

  /** The type; one unit keeps its type, so the last recorded by the day holds. */
  AssemblyType type(LocalDate day) {
    AssemblyType type = null;
    for (AssemblyInstalled installed : installations) {
      if (installed.type() != null && (type == null || !installed.when().day().isAfter(day))) {
        type = installed.type();
      }
    }
    return type;
  }

  /** Nominal size as entered; null where not recorded. */
  String sizeInch(LocalDate day) {
    String size = null;
    for (AssemblyInstalled installed : installations) {
      if (installed.sizeInch() != null && (size == null || !installed.when().day().isAfter(day))) {
        size = installed.sizeInch();
      }
    }
    return size;
  }

  /** Mainlines in parallel inside the assembly: 1 where not recorded. */
  int mainlines(LocalDate day) {
    AssemblyInstalled installed = installation(day);
    return installed == null || installed.mainlineCount() == null
        ? 1
        : Math.max(1, installed.mainlineCount());
  }

  /** First day on which the unit is known to have been new at its place; null where unknown. */
  LocalDate firstInstalledOn() {
    for (AssemblyInstalled installed : installations) {
      if (installed.dayMeaning() == DayMeaning.INSTALLED) {
        return installed.when().day();
      }
    }
    return null;
  }

  /** Calibrations of a gauge in order of time. */
  List<GaugeCalibrated> calibrations(String gaugeId) {
    return calibrations.getOrDefault(gaugeId, List.of());
  }

  /** Certificates of a tester in order of time. */
  List<TesterCertified> certificates(String testerId) {
    return certificates.getOrDefault(testerId, List.of());
  }

  /** The place as of a day. */
  Place place(LocalDate day) {
    AssemblyInstalled installed = installation(day);
    String siteId = installed == null ? null : installed.siteId();
    PlaceParts parts = new PlaceParts(siteId, installed == null ? null : installed.positionId());
    for (AssemblyEvent event : descriptions) {
      if (event instanceof AssemblyChanged changed && !changed.when().day().isAfter(day)) {
        parts.positionId = last(parts.positionId, changed.positionId());
      }
    }
    for (AssemblyEvent event : descriptions) {
      boolean later = event.when().day().isAfter(day);
      if (event instanceof AssemblyChanged changed && !later) {
        parts.take(changed);
      } else if (event instanceof SiteDescribed site && site.siteId().equals(siteId)) {
        parts.take(site, later);
      }
    }
    return parts.place();
  }

  private static <T> T last(T known, T next) {
    return next == null ? known : next;
  }

  /** The attributes of a place while they are gathered in order of time. */
  private static final class PlaceParts {
    private final String siteId;
    private String positionId;
    private String label;
    private String zoneId;
    private String jurisdiction;
    private SiteDescribed.HazardClass hazard;
    private SiteDescribed.Protection protection;
    private SiteDescribed.WaterUse use;
    private String ownerId;
    private Double latitude;
    private Double longitude;

    PlaceParts(String siteId, String positionId) {
      this.siteId = siteId;
      this.positionId = positionId;
    }

    void take(AssemblyChanged changed) {
      zoneId = last(zoneId, changed.zoneId());
      hazard = last(hazard, changed.hazard());
      use = last(use, changed.use());
      ownerId = last(ownerId, changed.ownerId());
    }

    /** A later description fills only what nothing before it tells. */
    void take(SiteDescribed site, boolean later) {
      if (site.positionId() != null && !site.positionId().equals(positionId)) {
        return;
      }
      label = choose(label, site.label(), later);
      zoneId = choose(zoneId, site.zoneId(), later);
      jurisdiction = choose(jurisdiction, site.jurisdiction(), later);
      hazard = choose(hazard, site.hazard(), later);
      protection = choose(protection, site.protection(), later);
      use = choose(use, site.use(), later);
      ownerId = choose(ownerId, site.ownerId(), later);
      latitude = choose(latitude, site.latitude(), later);
      longitude = choose(longitude, site.longitude(), later);
    }

    private static <T> T choose(T known, T next, boolean later) {
      return later && known != null ? known : last(known, next);
    }

    Place place() {
      return new Place(
          siteId,
          label,
          positionId,
          zoneId,
          jurisdiction,
          hazard,
          protection,
          use,
          ownerId,
          latitude,
          longitude);
    }
  }
}
