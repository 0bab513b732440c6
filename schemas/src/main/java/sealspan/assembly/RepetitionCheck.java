package sealspan.assembly;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Reading;
import sealspan.event.TestPerformed;
import sealspan.event.TestPerformed.Phase;

/** Looks for the same readings visit after visit, which a gauge hardly ever gives. */
final class RepetitionCheck {
  /** As-found rounds in a row with equal readings from which on it is noticed; own choice. */
  private static final int IN_A_ROW = 3;

  /** Numbers that a round must have, because one alone repeats by chance; own choice. */
  private static final int FEWEST_NUMBERS = 2;

  private RepetitionCheck() {}

  private record Number(ComponentAt at, Measure measure, BigDecimal base) {}

  static void all(List<HistoryStep> steps, FindingLog log) {
    List<Number> last = List.of();
    int row = 0;
    for (HistoryStep step : steps) {
      TestRound round = step.round();
      if (round == null || round.phase() != Phase.AS_FOUND || round.counting() == Counting.RETEST) {
        continue;
      }
      List<Number> numbers = numbers(round.test());
      boolean same = numbers.size() >= FEWEST_NUMBERS && same(numbers, last);
      row = same ? row + 1 : 1;
      last = numbers;
      if (row >= IN_A_ROW) {
        log.add(
            Finding.Kind.SUSPICIOUS,
            "same readings again",
            step.source(),
            "All readings are the same in " + row + " as-found tests in a row.");
      }
    }
  }

  private static List<Number> numbers(TestPerformed test) {
    List<Number> numbers = new ArrayList<>(4);
    for (Reading reading : test.readings()) {
      if (reading.observation() == Observation.MEASURED && reading.measure() != Measure.BUFFER) {
        numbers.add(
            new Number(reading.at(), reading.measure(), ReadingUnits.inBase(reading.value())));
      }
    }
    return numbers;
  }

  /** Equal in value: 1.4 is 1.40. */
  private static boolean same(List<Number> a, List<Number> b) {
    if (a.size() != b.size()) {
      return false;
    }
    for (int i = 0; i < a.size(); i++) {
      boolean equal =
          a.get(i).at().equals(b.get(i).at())
              && a.get(i).measure() == b.get(i).measure()
              && a.get(i).base().compareTo(b.get(i).base()) == 0;
      if (!equal) {
        return false;
      }
    }
    return true;
  }
}
