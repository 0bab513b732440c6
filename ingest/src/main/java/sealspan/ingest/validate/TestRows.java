package sealspan.ingest.validate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.InstallationCheck;
import sealspan.event.Measure;
import sealspan.event.Moment;
import sealspan.event.Observation;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Visit;
import sealspan.ingest.validate.Problem.Fault;

/** Test rounds from rows. */
final class TestRows {
  private static final Column TYPE = Columns.named("type");
  private static final Column PURPOSE = Columns.named("purpose");
  private static final Column CONDUCT = Columns.named("conduct");
  private static final Column END_TIME = Columns.named("end_time");
  private static final Column REPORT_NUMBER = Columns.named("report_number");
  private static final Column TESTER = Columns.named("tester_id");
  private static final Column CERTIFICATE = Columns.named("certificate_number");
  private static final Column CERTIFICATE_UNTIL = Columns.named("certificate_valid_until");
  private static final Column GAUGE = Columns.named("gauge_id");
  private static final Column CALIBRATED = Columns.named("gauge_calibrated_on");
  private static final Column RESOLUTION = Columns.named("gauge_resolution_psid");
  private static final Column LINE_PRESSURE = Columns.named("line_pressure_psi");
  private static final Column FLOW_STATE = Columns.named("flow_state");
  private static final Column DOWNSTREAM = Columns.named("downstream_shutoff");
  private static final Column COMPENSATING = Columns.named("compensating_step");
  private static final Column METHOD = Columns.named("method");
  private static final Column EDITION = Columns.named("procedure_edition");
  private static final Column RELIEF = Columns.named("relief_psid");
  private static final Column BUFFER = Columns.named("buffer_psid");
  private static final Column METER_REGISTERS = Columns.named("meter_registers");
  private static final Column METER_READING = Columns.named("bypass_meter_reading");
  private static final Column CONFIRMATION_OF = Columns.named("confirmation_of");
  private static final Column CONFIRMATION = Columns.named("confirmation_psid");
  private static final Column RELIEF_DISCHARGE = Columns.named("relief_discharge");
  private static final Column TEMPERATURE = Columns.named("water_temperature_c");
  private static final Column FLUSHED = Columns.named("flushed_to_pass");
  private static final Column SERIAL_SEEN = Columns.named("serial_seen");
  private static final Column SIGNED = Columns.named("signed");
  private static final Column VERDICT = Columns.named("verdict");
  private static final Column REMARKS = Columns.named("remarks");
  private static final Column ATTACHMENTS = Columns.named("attachment_sha256");

  private TestRows() {}

  /**
   * A test round.
   *
   * @param round fields of its block
   * @param row fields of the whole row
   */
  static TestPerformed of(
      Fields round, Fields row, String assemblyId, Moment when, Visit visit, Phase phase) {
    AssemblyType type = row.has(TYPE) ? Codes.TYPE.parse(row.text(TYPE)) : null;
    List<Reading> readings = readings(round, type);
    return new TestPerformed(
        assemblyId,
        when,
        round.minuteOfDay(END_TIME),
        visit,
        round.text(REPORT_NUMBER),
        phase,
        round.code(PURPOSE, Codes.PURPOSE),
        round.code(CONDUCT, Codes.CONDUCT),
        round.text(TESTER),
        round.text(CERTIFICATE),
        round.validityDay(CERTIFICATE_UNTIL),
        round.text(GAUGE),
        calibrated(round, when),
        round.quantityFromZero(LINE_PRESSURE),
        round.code(FLOW_STATE, Codes.FLOW_STATE),
        round.code(DOWNSTREAM, Codes.SHUTOFF),
        round.code(COMPENSATING, Codes.COMPENSATING_STEP),
        round.text(METHOD),
        round.text(EDITION),
        readings,
        confirmation(round, type, readings),
        round.code(RELIEF_DISCHARGE, Codes.DISCHARGE),
        round.text(METER_READING),
        conditions(round),
        round.quantity(TEMPERATURE),
        round.yesNo(FLUSHED),
        round.text(SERIAL_SEEN),
        round.yesNo(SIGNED),
        round.code(VERDICT, Codes.VERDICT),
        round.text(REMARKS),
        attachments(round));
  }

  private static LocalDate calibrated(Fields round, Moment when) {
    LocalDate day = round.pastDay(CALIBRATED);
    if (day != null && when != null && day.isAfter(when.day())) {
      round.add(
          CALIBRATED,
          Fault.CONTRADICTION,
          day + " is after the test, so it cannot be the gauge's last calibration before it.",
          "Check both days.");
    }
    return day;
  }

  private static List<Reading> readings(Fields round, AssemblyType type) {
    List<Reading> readings = new ArrayList<>(8);
    Quantity resolution = round.quantityFromZero(RESOLUTION);
    for (BlockPlan.LineCells line : round.block().lines()) {
      new LineReadings(
              round.of(line), line, isReducedPressure(round.of(line), line, type), resolution)
          .addTo(readings);
    }
    if (round.has(METER_REGISTERS)) {
      Observation seen = round.code(METER_REGISTERS, Codes.OPENING);
      if (seen != null) {
        readings.add(
            Reading.seen(
                ComponentAt.bypass(Component.BYPASS_METER), Measure.METER_REGISTERS, seen));
      }
    }
    return readings;
  }

  /**
   * A reduced pressure line is known by the type of the assembly, else by its relief valve. The
   * bypass of a type II detector is a single check.
   */
  private static boolean isReducedPressure(
      Fields fields, BlockPlan.LineCells line, AssemblyType type) {
    if (type == null) {
      return fields.has(RELIEF) || fields.has(BUFFER);
    }
    return isReducedPressure(type, line.line());
  }

  private static boolean isReducedPressure(AssemblyType type, ComponentAt.Line line) {
    return type == AssemblyType.RPDA
        || line == ComponentAt.Line.MAIN
            && (type == AssemblyType.RP || type == AssemblyType.RPDA_II);
  }

  private static Reading confirmation(Fields round, AssemblyType type, List<Reading> readings) {
    String part = round.text(CONFIRMATION_OF);
    String value = round.text(CONFIRMATION);
    if (part == null && value == null) {
      return null;
    }
    if (part == null || value == null) {
      round.add(
          part == null ? CONFIRMATION_OF : CONFIRMATION,
          Fault.MISSING,
          "It is empty, and a confirmation reading needs both its part and its value.",
          "Fill in both or neither.");
      return null;
    }
    ComponentAt at = Parts.parse(part);
    if (at == null) {
      round.add(
          CONFIRMATION_OF,
          Fault.NO_SUCH_PART,
          "'" + part + "' is a part that no type of assembly has.",
          "Write such as check1, relief or bypass.check2.");
      return null;
    }
    for (Reading reading : readings) {
      if (reading.at().equals(at)) {
        Measure measure = reading.measure();
        return LineReadings.reading(round, CONFIRMATION, value, at, measure, measure);
      }
    }
    Measure measure =
        switch (at.component()) {
          case CHECK1 ->
              isReducedPressure(type, at.line()) ? Measure.STATIC_DROP : Measure.DIRECTION_OF_FLOW;
          case CHECK2 -> Measure.DIRECTION_OF_FLOW;
          case RELIEF_VALVE, AIR_INLET -> Measure.OPENING_POINT;
          default -> Measure.TIGHTNESS;
        };
    return LineReadings.reading(round, CONFIRMATION, value, at, measure, measure);
  }

  private static List<InstallationCheck> conditions(Fields round) {
    if (round.block().conditions().isEmpty()) {
      return List.of();
    }
    List<InstallationCheck> checks = new ArrayList<>(4);
    for (BlockPlan.OpenCell open : round.block().conditions()) {
      Boolean met = round.yesNo(open);
      if (met != null) {
        checks.add(new InstallationCheck(open.name(), met));
      }
    }
    return checks;
  }

  private static List<String> attachments(Fields round) {
    List<String> hashes = round.list(ATTACHMENTS);
    for (String hash : hashes) {
      if (hash.length() != 64 || !hash.chars().allMatch(c -> Character.digit(c, 16) >= 0)) {
        round.add(
            ATTACHMENTS,
            Fault.NOT_A_NUMBER,
            Fields.quoted(hash) + " is no SHA-256.",
            "Write its 64 hexadecimal digits.");
        return List.of();
      }
    }
    return hashes;
  }
}
