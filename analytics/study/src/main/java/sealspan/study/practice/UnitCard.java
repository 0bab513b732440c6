package sealspan.study.practice;

import java.time.LocalDate;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.Moment;

/** What the record says of an assembly and how it came to its position. */
final class UnitCard {
  private UnitCard() {}

  /** The installation of a unit on its day. */
  static AssemblyInstalled installed(PracticeUnit unit, Site site) {
    return card(unit, site, DayMeaning.INSTALLED, LocalDate.ofEpochDay(unit.installDay));
  }

  /** The beginning of the record of a unit that stood there before. */
  static AssemblyInstalled recordBegins(PracticeUnit unit, Site site) {
    return card(unit, site, DayMeaning.RECORD_BEGINS, unit.parameters.recordBegins());
  }

  private static AssemblyInstalled card(
      PracticeUnit unit, Site site, DayMeaning meaning, LocalDate day) {
    boolean replaces = unit.number > 0 && unit.installDay >= unit.parameters.beginDay();
    return new AssemblyInstalled(
        unit.id(),
        Moment.on(day),
        meaning,
        site.id(),
        Names.position(unit.position),
        replaces ? Names.assembly(unit.position, unit.number - 1) : null,
        null,
        null,
        null,
        unit.type,
        unit.maker,
        unit.model(),
        unit.serial(),
        PracticeUnit.isDetector(unit.type) ? unit.serial() + "B" : null,
        unit.sizeInch,
        "horizontal",
        null,
        null,
        true);
  }
}
