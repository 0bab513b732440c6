package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.Counting;
import sealspan.assembly.Criterion;
import sealspan.assembly.Finding;
import sealspan.assembly.JudgedReading;
import sealspan.assembly.ReadingRuns;
import sealspan.assembly.ReadingUnits;
import sealspan.assembly.RunReading;
import sealspan.assembly.TestExposure;
import sealspan.assembly.TestRound;
import sealspan.event.Quantity;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.table.ReadingRow;
import sealspan.table.TestRow;

/** Rows of test rounds and their readings. */
final class TestRows {
  private TestRows() {}

  static TestRow test(AssemblyHistory history, TestRound round) {
    TestPerformed test = round.test();
    TestExposure exposure = exposure(history, round);
    return new TestRow(
        history.assemblyId(),
        round.source().id(),
        test.visit() == null ? null : test.visit().id(),
        test.visit() == null ? null : test.visit().sequence(),
        test.when().day(),
        test.reportNumber(),
        round.source().logged().source(),
        round.phase().name(),
        Text.of(test.purpose()),
        test.testerId(),
        test.gaugeId(),
        test.method(),
        test.procedureEdition(),
        Text.of(round.type()),
        round.sizeInch(),
        round.place().siteId(),
        round.place().zoneId(),
        round.ageDays(),
        Text.of(test.verdictIssued()),
        round.outcome().name(),
        reason(round),
        round.verdict().marginal(),
        round.counting() == Counting.COUNTED,
        notCounted(round, exposure),
        round.compliant(),
        exposure == null ? null : exposure.exposureDays(),
        Text.of(history.failureClass(round)),
        round.source().logged().reportedAt(),
        round.source().logged().recordedAt());
  }

  private static TestExposure exposure(AssemblyHistory history, TestRound round) {
    for (TestExposure exposure : history.exposures()) {
      if (exposure.at().equals(AssemblyHistory.WHOLE)
          && exposure.eventId().equals(round.source().id())) {
        return exposure;
      }
    }
    return null;
  }

  /** Every reason as a sentence of its own. */
  private static String reason(TestRound round) {
    StringBuilder words = new StringBuilder();
    for (String reason : round.verdict().reasons()) {
      words.append(words.length() == 0 ? "" : " ");
      words.append(Character.toUpperCase(reason.charAt(0))).append(reason, 1, reason.length());
      words.append('.');
    }
    for (Finding finding : round.compliance()) {
      words.append(words.length() == 0 ? "" : " ").append(finding.words());
    }
    return words.toString();
  }

  private static String notCounted(TestRound round, TestExposure exposure) {
    if (round.counting() != Counting.COUNTED || exposure != null) {
      return round.counting().because();
    }
    return "counts in shares, not in yearly rates: no earlier pass to count days from";
  }

  static List<ReadingRow> readings(String assemblyId, TestRound round, ReadingRuns runs) {
    List<ReadingRow> rows = new ArrayList<>(round.verdict().readings().size());
    for (int i = 0; i < round.verdict().readings().size(); i++) {
      JudgedReading judged = round.verdict().readings().get(i);
      Reading reading = judged.reading();
      Quantity value = reading.value();
      Criterion limit = judged.criterion();
      RunReading run = runs.of(round, i);
      rows.add(
          new ReadingRow(
              assemblyId,
              round.source().id(),
              round.test().when().day(),
              round.phase().name(),
              reading.at().text(),
              Text.of(reading.measure()),
              Text.of(reading.observation()),
              value == null ? null : value.entered(),
              value == null ? null : value.unit().name(),
              ReadingUnits.psi(value),
              limit == null ? null : limit.label(),
              judged.result().name(),
              judged.marginal(),
              run == null ? null : run.run(),
              run == null ? null : run.limitPsi(),
              run == null ? null : run.gaugeErrorPsi(),
              run == null ? null : run.stepPsi(),
              run == null ? null : run.gaugePeriod()));
    }
    return rows;
  }
}
