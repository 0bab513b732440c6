package sealspan.ingest.validate;

import java.util.List;
import java.util.Locale;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.ingest.validate.Problem.Fault;

/**
 * The readings of one line of an assembly in one round.
 *
 * @param line fields of the line
 * @param cells its cells
 * @param reducedPressure whether the line is that of a reduced pressure assembly
 * @param resolution smallest step that the gauge was read to; null where not recorded
 */
record LineReadings(
    Fields line, BlockPlan.LineCells cells, boolean reducedPressure, Quantity resolution) {
  private static final Column CHECK1 = Columns.named("check1_psid");
  private static final Column CHECK1_STATIC = Columns.named("check1_static_psid");
  private static final Column CHECK1_FLOW = Columns.named("check1_flow_psid");
  private static final Column CHECK1_BACK = Columns.named("check1_backpressure");
  private static final Column CHECK2 = Columns.named("check2_psid");
  private static final Column CHECK2_BACK = Columns.named("check2_backpressure");
  private static final Column RELIEF = Columns.named("relief_psid");
  private static final Column BUFFER = Columns.named("buffer_psid");
  private static final Column AIR_INLET = Columns.named("air_inlet_psid");
  private static final Column AIR_INLET_FULL = Columns.named("air_inlet_full");
  private static final Column SHUTOFF1 = Columns.named("shutoff1");
  private static final Column SHUTOFF2 = Columns.named("shutoff2");
  private static final Column TEST_COCKS = Columns.named("test_cocks");
  private static final Column BODY = Columns.named("body");

  void addTo(List<Reading> readings) {
    Measure drop = reducedPressure ? Measure.STATIC_DROP : Measure.DIRECTION_OF_FLOW;
    Measure words2 = reducedPressure ? Measure.BACKPRESSURE_TIGHTNESS : Measure.DIRECTION_OF_FLOW;
    measured(readings, CHECK1, Component.CHECK1, drop, drop);
    measured(readings, CHECK1_STATIC, Component.CHECK1, Measure.STATIC_DROP, Measure.STATIC_DROP);
    measured(
        readings,
        CHECK1_FLOW,
        Component.CHECK1,
        Measure.DIRECTION_OF_FLOW,
        Measure.DIRECTION_OF_FLOW);
    seen(readings, CHECK1_BACK, Component.CHECK1, Measure.BACKPRESSURE_TIGHTNESS, Codes.TIGHTNESS);
    measured(readings, CHECK2, Component.CHECK2, Measure.DIRECTION_OF_FLOW, words2);
    seen(readings, CHECK2_BACK, Component.CHECK2, Measure.BACKPRESSURE_TIGHTNESS, Codes.TIGHTNESS);
    measured(
        readings, RELIEF, Component.RELIEF_VALVE, Measure.OPENING_POINT, Measure.OPENING_POINT);
    buffer(readings);
    measured(
        readings, AIR_INLET, Component.AIR_INLET, Measure.OPENING_POINT, Measure.OPENING_POINT);
    seen(readings, AIR_INLET_FULL, Component.AIR_INLET, Measure.FULL_OPENING, Codes.OPENING);
    seen(readings, SHUTOFF1, Component.SHUTOFF1, Measure.TIGHTNESS, Codes.TIGHTNESS);
    seen(readings, SHUTOFF2, Component.SHUTOFF2, Measure.TIGHTNESS, Codes.TIGHTNESS);
    seen(readings, TEST_COCKS, Component.TEST_COCKS, Measure.TIGHTNESS, Codes.TIGHTNESS);
    seen(readings, BODY, Component.BODY, Measure.TIGHTNESS, Codes.TIGHTNESS);
  }

  private void measured(
      List<Reading> readings,
      Column column,
      Component component,
      Measure ofNumber,
      Measure ofWords) {
    String text = line.text(column);
    if (text == null) {
      return;
    }
    Reading reading = reading(line, column, text, cells.at(component), ofNumber, ofWords);
    if (reading == null) {
      return;
    }
    for (Reading other : readings) {
      if (other.at().equals(reading.at()) && other.measure() == reading.measure()) {
        line.add(
            column,
            Fault.CONTRADICTION,
            "Two columns tell the " + name(reading.measure()) + " of " + other.at().text() + ".",
            "Leave one of the two empty.");
        return;
      }
    }
    readings.add(withResolution(reading));
  }

  private Reading withResolution(Reading reading) {
    boolean same =
        resolution != null
            && reading.value() != null
            && reading.value().unit() == resolution.unit();
    return same
        ? new Reading(
            reading.at(),
            reading.measure(),
            reading.observation(),
            reading.value(),
            resolution.entered())
        : reading;
  }

  private void buffer(List<Reading> readings) {
    if (line.has(BUFFER)) {
      Quantity value = line.quantity(BUFFER);
      if (value != null) {
        readings.add(Reading.measured(cells.at(Component.CHECK1), Measure.BUFFER, value));
      }
    }
  }

  private void seen(
      List<Reading> readings,
      Column column,
      Component component,
      Measure measure,
      CodeList<Observation> codes) {
    if (line.has(column)) {
      Observation observation = line.code(column, codes);
      if (observation != null) {
        readings.add(Reading.seen(cells.at(component), measure, observation));
      }
    }
  }

  private static String name(Enum<?> code) {
    return code.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** A number or what was seen; null, with a problem, where it is neither. */
  static Reading reading(
      Fields fields,
      Column column,
      String text,
      ComponentAt at,
      Measure ofNumber,
      Measure ofWords) {
    if (Numbers.looksLike(text)) {
      Quantity value = fields.quantityFromZero(column);
      return value == null ? null : Reading.measured(at, ofNumber, value);
    }
    Observation seen = fields.code(column, text, Codes.READING);
    if (seen == null) {
      return null;
    }
    boolean opens =
        at.component() == Component.RELIEF_VALVE || at.component() == Component.AIR_INLET;
    boolean fits =
        switch (seen) {
          case OPENED, DID_NOT_OPEN -> opens;
          case MEASURED -> false;
          case CLOSED_TIGHT, LEAKED, NOT_TESTED -> true;
        };
    if (!fits) {
      fields.add(
          column,
          Fault.CONTRADICTION,
          "'" + text + "' cannot be seen at " + at.text() + ".",
          "Write a number, closed tight, leaked or not tested.");
      return null;
    }
    return Reading.seen(at, ofWords, seen);
  }
}
