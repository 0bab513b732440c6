package sealspan.stats.recurrence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sealspan.stats.LiveR;

/** Outside check: R's package survival on random histories. */
@LiveR.Needed
class RecurrenceAgainstRTest {

  /** survfit(Surv(from, to, event) ~ 1, id = unit): Nelson's curve with a robust error. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void meanCumulativeFunction(int seed) {
    Random random = new Random(seed);
    List<EventHistory> histories = new ArrayList<>();
    List<double[]> rows = new ArrayList<>();
    for (int unit = 0; unit < 60; unit++) {
      int entry = unit % 3 == 0 ? random.nextInt(300) : 0;
      int exit = entry + 50 + random.nextInt(1_500);
      int[] events = random.ints(random.nextInt(5), entry + 1, exit).distinct().sorted().toArray();
      histories.add(EventHistory.watched(entry, exit, events));
      int from = entry;
      for (int event : events) {
        rows.add(new double[] {unit, from, event, 1});
        from = event;
      }
      rows.add(new double[] {unit, from, exit, 0});
    }
    Map<String, double[]> r =
        LiveR.given("unit", column(rows, 0))
            .and("from", column(rows, 1))
            .and("to", column(rows, 2))
            .and("event", column(rows, 3))
            .ask(
                "f <- survfit(Surv(from, to, event) ~ 1, id = unit); k <- f$n.event > 0;"
                    + "answer <- list(time = f$time[k], mean = f$cumhaz[k], se = f$std.chaz[k])");
    MeanCumulativeFunction mcf =
        MeanCumulativeFunction.of(histories, MeanCumulativeFunction.Mark.COUNT).orThrow();
    int[] days = mcf.days();
    assertEquals(r.get("time").length, days.length);
    for (int j = 0; j < days.length; j++) {
      assertEquals(r.get("time")[j], days[j]);
      assertEquals(r.get("mean")[j], mcf.mean()[j], 1e-11);
      assertEquals(r.get("se")[j], Math.sqrt(mcf.variance()[j]), 1e-10);
    }
  }

  private static double[] column(List<double[]> rows, int index) {
    return rows.stream().mapToDouble(row -> row[index]).toArray();
  }
}
