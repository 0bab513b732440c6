package sealspan.ingest.log;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.InstallationCheck;
import sealspan.event.LoggedEvent;
import sealspan.event.Measure;
import sealspan.event.Moment;
import sealspan.event.NaturalKey;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.Unit;
import sealspan.event.Visit;

/** Invented test rounds, as full as a usual report, the same for the same number. */
final class SampleEvents {
  private static final int ASSEMBLIES = 5_000;

  private SampleEvents() {}

  static List<LoggedEvent> rounds(int from, int to) {
    return IntStream.range(from, to).mapToObj(i -> round(i, "passed as found")).toList();
  }

  static LoggedEvent round(int number, String remarks) {
    TestPerformed test = test(number, remarks);
    String id = NaturalKey.idOf("sample", test);
    return new LoggedEvent(
        id,
        "sample",
        test,
        Instant.parse("2024-05-02T00:00:00Z"),
        LoggedEvent.ReportedOrigin.GIVEN,
        null,
        LoggedEvent.Arrival.IMPORTED);
  }

  private static TestPerformed test(int number, String remarks) {
    Random random = new Random(number);
    Moment when =
        new Moment(
            LocalDate.of(2015, 1, 1).plusDays(random.nextInt(3_650)),
            480 + random.nextInt(480),
            "America/Denver");
    return new TestPerformed(
        String.format("A-%06d", number % ASSEMBLIES),
        when,
        when.minuteOfDay() + 20,
        new Visit("V-" + number, when.minuteOfDay(), 1, Visit.SequenceOrigin.DERIVED),
        "R-" + number,
        TestPerformed.Phase.AS_FOUND,
        TestPerformed.Purpose.ROUTINE,
        TestPerformed.Conduct.COMPLETED,
        "T-" + random.nextInt(60),
        "C-" + random.nextInt(60),
        LocalDate.of(2026, 6, 30),
        "G-" + random.nextInt(60),
        LocalDate.of(2024, 1, 15),
        new Quantity(Integer.toString(45 + random.nextInt(40)), Unit.PSI),
        TestPerformed.FlowState.NO_FLOW,
        TestPerformed.ShutoffState.TIGHT,
        TestPerformed.CompensatingStep.NONE,
        "DIRECTION_OF_FLOW",
        null,
        List.of(
            reading(Component.CHECK1, Measure.STATIC_DROP, random, 50),
            reading(Component.CHECK2, Measure.DIRECTION_OF_FLOW, random, 10),
            reading(Component.RELIEF_VALVE, Measure.OPENING_POINT, random, 20)),
        null,
        TestPerformed.Discharge.NONE,
        null,
        List.of(new InstallationCheck("clear of flooding", true)),
        null,
        false,
        "S" + (100_000 + number % ASSEMBLIES),
        true,
        TestPerformed.IssuedVerdict.PASSED,
        remarks,
        List.of());
  }

  private static Reading reading(Component c, Measure m, Random random, int tenths) {
    int value = tenths + random.nextInt(40);
    Quantity quantity = new Quantity(value / 10 + "." + value % 10, Unit.PSI);
    return Reading.measured(ComponentAt.main(c), m, quantity);
  }
}
