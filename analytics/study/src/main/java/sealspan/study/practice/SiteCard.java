package sealspan.study.practice;

import sealspan.event.AssemblyType;
import sealspan.event.Moment;
import sealspan.event.SiteDescribed;
import sealspan.study.practice.Draws.Purpose;

/** What the record says of a site, or of one position of a larger site. */
final class SiteCard {
  private SiteCard() {}

  /** The whole site; of a site with one position, its use and hazard too. */
  static SiteDescribed of(PracticeParameters parameters, Site site) {
    AssemblyType only = site.size() == 1 ? PracticeUnit.typeAt(parameters, site.first()) : null;
    return card(parameters, site, null, only);
  }

  /** One position of a site with several. */
  static SiteDescribed of(PracticeParameters parameters, Site site, PracticeUnit unit) {
    return card(parameters, site, Names.position(unit.position), unit.type);
  }

  private static SiteDescribed card(
      PracticeParameters parameters, Site site, String positionId, AssemblyType type) {
    PracticeTown town = parameters.town();
    SiteDescribed.WaterUse use = type == null ? null : use(parameters, site, type);
    return new SiteDescribed(
        site.id(),
        new Moment(parameters.recordBegins(), null, town.timeZone()),
        positionId,
        "Practice site " + site.id().substring(1),
        "M" + site.id().substring(1),
        null,
        "O" + site.id().substring(1),
        Site.latitude(town, site.northM()),
        Site.longitude(town, site.eastM()),
        null,
        Names.zone(site.zone()),
        town.jurisdiction(),
        town.timeZone(),
        type == null ? null : hazard(type),
        SiteDescribed.Protection.CONTAINMENT,
        use,
        null,
        false);
  }

  private static SiteDescribed.HazardClass hazard(AssemblyType type) {
    return switch (type) {
      case DC, DCDA, DCDA_II -> SiteDescribed.HazardClass.LOW;
      default -> SiteDescribed.HazardClass.HIGH;
    };
  }

  private static SiteDescribed.WaterUse use(
      PracticeParameters parameters, Site site, AssemblyType type) {
    if (PracticeUnit.isDetector(type)) {
      return SiteDescribed.WaterUse.FIRE;
    }
    return switch (type) {
      case PVB, SVB, AVB -> SiteDescribed.WaterUse.IRRIGATION;
      default -> {
        Draws draws = Draws.of(parameters.seed(), Purpose.SITE, site.first(), 2, type.ordinal());
        yield switch (draws.place(0.6, 0.15, 0.1, 0.15)) {
          case 0 -> SiteDescribed.WaterUse.DOMESTIC;
          case 1 -> SiteDescribed.WaterUse.INDUSTRIAL;
          case 2 -> SiteDescribed.WaterUse.MEDICAL;
          default -> SiteDescribed.WaterUse.COOLING;
        };
      }
    };
  }
}
