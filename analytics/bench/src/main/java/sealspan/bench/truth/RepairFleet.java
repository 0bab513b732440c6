package sealspan.bench.truth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.event.LoggedEvent;
import sealspan.study.AssemblyTables;
import sealspan.study.LatestFits;
import sealspan.study.practice.PositionTruth;
import sealspan.study.practice.PracticeFleet;
import sealspan.study.practice.PracticeParameters;
import sealspan.study.practice.TrueAction;
import sealspan.table.RepairEpisodeRow;

/**
 * The repair episodes of a practice fleet that fails by wear alone, each with what either action
 * would truly have led to within a year: {@code 1 - exp(-f (H(q v + 1) - H(q v)))} with the frailty
 * f of the assembly, its virtual age v before the action, and {@code H(a) = (a/scale)^shape}.
 *
 * @param episodes the episodes
 * @param cases the true values of those that are compared
 */
record RepairFleet(List<RepairEpisodeRow> episodes, List<TrueCase> cases) {
  private static final double YEAR = PracticeParameters.DAYS_A_YEAR;

  /**
   * What is true of one case.
   *
   * @param renewed whether the seal was renewed
   * @param failed whether it failed at the next test
   * @param chance true probability that it would be renewed
   * @param ifCleaned true risk of a year after cleaning
   * @param ifRenewed true risk of a year after a new seal
   */
  record TrueCase(
      boolean renewed, boolean failed, double chance, double ifCleaned, double ifRenewed) {}

  private record Key(String assemblyId, String component, LocalDate day) {}

  static RepairFleet of(PracticeParameters parameters, AcceptanceCriteria criteria) {
    PracticeFleet fleet = new PracticeFleet(parameters);
    List<RepairEpisodeRow> episodes = new ArrayList<>();
    List<TrueCase> cases = new ArrayList<>();
    for (int position = 0; position < parameters.positions(); position++) {
      PositionTruth truth = fleet.truthAt(position);
      if (truth.actions().isEmpty()) {
        continue;
      }
      Map<Key, TrueAction> actions = new HashMap<>();
      for (TrueAction action : truth.actions()) {
        actions.putIfAbsent(
            new Key(action.assemblyId(), action.component().text(), action.day()), action);
      }
      List<LoggedEvent> events = fleet.eventsAt(position);
      for (PositionTruth.TrueUnit unit : truth.units()) {
        for (RepairEpisodeRow row :
            AssemblyTables.of(unit.assemblyId(), events, criteria, LatestFits.none(), 0)
                .repairEpisodes()) {
          episodes.add(row);
          TrueAction action = actions.get(new Key(row.assemblyId(), row.component(), row.day()));
          if (row.leftOutBecause() == null && action.replaceProbability() != null) {
            cases.add(truth(parameters, unit.frailty(), row, action));
          }
        }
      }
    }
    return new RepairFleet(episodes, cases);
  }

  private static TrueCase truth(
      PracticeParameters parameters, double frailty, RepairEpisodeRow row, TrueAction action) {
    double v = action.virtualAgeBeforeDays();
    return new TrueCase(
        row.decision().equals("SEAL_RENEWED"),
        row.failedNext(),
        action.replaceProbability(),
        risk(parameters, frailty, parameters.repairs().qClean() * v),
        risk(parameters, frailty, parameters.repairs().qReplace() * v));
  }

  private static double risk(PracticeParameters parameters, double frailty, double age) {
    double scale = parameters.wear().checkScaleYears() * YEAR;
    double shape = parameters.wear().checkShape();
    double hazard = Math.pow((age + YEAR) / scale, shape) - Math.pow(age / scale, shape);
    return -Math.expm1(-frailty * hazard);
  }
}
