package sealspan.ingest.source;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import sealspan.event.Action;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;
import sealspan.event.InstallationCheck;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.PartFitted;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.TestPerformed;
import sealspan.event.Unit;
import sealspan.ingest.validate.Columns;

/** Test rounds and repairs as cells of documented columns. */
final class RoundFields {
  private RoundFields() {}

  static void test(TestPerformed test, FieldMap fields) {
    fields
        .text("assembly_id", test.assemblyId())
        .moment(test.when())
        .visit(test.visit(), test.phase() == TestPerformed.Phase.AS_LEFT ? 3 : 1)
        .text("report_number", test.reportNumber())
        .code("phase", test.phase())
        .code("purpose", test.purpose())
        .code("conduct", test.conduct())
        .timeOfDay("end_time", test.endMinuteOfDay())
        .text("tester_id", test.testerId())
        .text("certificate_number", test.certificateNumber())
        .day("certificate_valid_until", test.certificateValidUntil())
        .text("gauge_id", test.gaugeId())
        .day("gauge_calibrated_on", test.gaugeCalibratedOn())
        .code("flow_state", test.flowState())
        .code("downstream_shutoff", test.downstreamShutoff())
        .code("compensating_step", test.compensatingStep())
        .text("method", test.method())
        .text("procedure_edition", test.procedureEdition());
    linePressure(test.linePressure(), fields);
    readings(test.readings(), fields);
    confirmation(test.confirmation(), fields);
    fields
        .code("relief_discharge", test.reliefDischarge())
        .text("bypass_meter_reading", test.bypassMeterReading())
        .quantity("water_temperature", test.waterTemperature());
    for (InstallationCheck check : test.installationChecks()) {
      fields.yesNo("condition_" + check.name().replace(' ', '_'), check.met());
    }
    fields
        .yesNo("flushed_to_pass", test.flushedToPass())
        .text("serial_seen", test.serialSeen())
        .yesNo("signed", test.signedByTester())
        .code("verdict", test.verdictIssued())
        .text("remarks", test.remarks())
        .list("attachment_sha256", test.attachmentHashes());
  }

  /** The one pressure that is no differential, so its name ends in psi. */
  private static void linePressure(Quantity pressure, FieldMap fields) {
    if (pressure != null && pressure.unit() == Unit.PSI) {
      fields.text("line_pressure_psi", pressure.entered());
    } else {
      fields.quantity("line_pressure", pressure);
    }
  }

  private static void readings(List<Reading> readings, FieldMap fields) {
    Set<String> resolutions = new HashSet<>();
    for (Reading reading : readings) {
      Quantity value = reading.value();
      boolean number = reading.observation() == Observation.MEASURED;
      String base = line(reading.at()) + base(reading);
      String column = isSeenOnly(reading.measure()) ? base : base + unit(value);
      fields.text(column, number ? value.entered() : word(reading.observation()));
      if (number) {
        resolutions.add(String.valueOf(reading.resolution()));
        if (reading.resolution() != null) {
          fields.quantity("gauge_resolution", new Quantity(reading.resolution(), value.unit()));
        }
      }
    }
    if (resolutions.size() > 1) {
      throw new IllegalArgumentException("One row has readings of one resolution only.");
    }
  }

  private static String unit(Quantity value) {
    return value == null ? "_psid" : FieldMap.suffix(value.unit());
  }

  private static String word(Observation observation) {
    return observation.name().toLowerCase(Locale.ROOT);
  }

  private static boolean isSeenOnly(Measure measure) {
    return switch (measure) {
      case BACKPRESSURE_TIGHTNESS, FULL_OPENING, TIGHTNESS, METER_REGISTERS -> true;
      case DIRECTION_OF_FLOW, STATIC_DROP, OPENING_POINT, BUFFER, SEPARATION -> false;
    };
  }

  private static String line(ComponentAt at) {
    if (at.component() == Component.BYPASS_METER) {
      return "";
    }
    return at.line() == Line.BYPASS
        ? "bypass_"
        : at.lineNumber() == 1 ? "" : "main" + at.lineNumber() + "_";
  }

  private static String base(Reading reading) {
    Component component = reading.at().component();
    String base =
        switch (reading.measure()) {
          case STATIC_DROP -> component == Component.CHECK1 ? "check1_static" : null;
          case DIRECTION_OF_FLOW ->
              switch (component) {
                case CHECK1 -> "check1_flow";
                case CHECK2 -> "check2";
                default -> null;
              };
          case BACKPRESSURE_TIGHTNESS ->
              switch (component) {
                case CHECK1 -> "check1_backpressure";
                case CHECK2 -> "check2_backpressure";
                default -> null;
              };
          case OPENING_POINT ->
              switch (component) {
                case RELIEF_VALVE -> "relief";
                case AIR_INLET -> "air_inlet";
                default -> null;
              };
          case FULL_OPENING -> component == Component.AIR_INLET ? "air_inlet_full" : null;
          case BUFFER -> component == Component.CHECK1 ? "buffer" : null;
          case METER_REGISTERS -> component == Component.BYPASS_METER ? "meter_registers" : null;
          case TIGHTNESS -> PARTS.get(component);
          case SEPARATION -> null;
        };
    if (base == null) {
      throw new IllegalArgumentException(
          "No column tells the " + reading.measure() + " of " + reading.at().text() + ".");
    }
    return base;
  }

  private static final Map<Component, String> PARTS = Columns.partNames();

  private static void confirmation(Reading reading, FieldMap fields) {
    if (reading != null) {
      fields.text("confirmation_of", reading.at().text());
      fields.text(
          "confirmation" + unit(reading.value()),
          reading.value() == null ? word(reading.observation()) : reading.value().entered());
    }
  }

  static void repair(RepairPerformed repair, FieldMap fields) {
    fields
        .text("assembly_id", repair.assemblyId())
        .moment(repair.when())
        .visit(repair.visit(), 2)
        .text("report_number", repair.reportNumber());
    Map<ComponentAt, RepairItem> told = new HashMap<>();
    for (RepairItem item : repair.items()) {
      if (told.put(item.at(), item) != null) {
        throw new IllegalArgumentException(
            "One row has one action of " + item.at().text() + " only.");
      }
      item(item, line(item.at()) + PARTS.get(item.at().component()), fields);
    }
    fields
        .list("crew_ids", repair.crewIds())
        .whole("work_minutes", repair.workMinutes())
        .yesNo("warranty", repair.warranty())
        .text("remarks", repair.remarks());
  }

  private static void item(RepairItem item, String part, FieldMap fields) {
    boolean renews =
        item.action() == null || item.action().sealEffect() == Action.SealEffect.RENEWED;
    if (item.parts().size() > 1 || item.reason() != null && !renews) {
      throw new IllegalArgumentException("No columns tell all of " + item + ".");
    }
    fields
        .code(part + "_action", item.action())
        .code(part + "_mode", item.mode())
        .code(part + "_mechanism", item.mechanism())
        .code(part + "_cause", item.cause())
        .code(part + "_reason", item.reason());
    for (PartFitted fitted : item.parts()) {
      fields
          .text(part + "_fitted", fitted.kind())
          .text(part + "_kit", fitted.kitNumber())
          .text(part + "_kit_maker", fitted.maker())
          .text(part + "_material", fitted.material())
          .text(part + "_lot", fitted.lot())
          .whole(part + "_quantity", fitted.quantity())
          .money(part + "_unit_price", fitted.unitPrice())
          .text(part + "_supplier_id", fitted.supplierId());
    }
  }
}
