package sealspan.study.watch;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import sealspan.table.LedgerEntry;
import sealspan.table.WatchAlarmRow;
import sealspan.table.WatchRows;

/**
 * The watch over all assemblies: as it was known and restated. It may be told of assemblies and
 * models in any order and again; its rows depend on what it was told last of each alone.
 */
public final class WatchBook {
  private final Map<String, List<WatchedTest>> byAssembly = new HashMap<>();
  private final List<LedgerEntry> entries = new ArrayList<>();
  private final Set<String> entryIds = new HashSet<>();
  private final Map<String, WatchZones> zonesOf = new HashMap<>();
  private final WatchRun asKnown = new WatchRun("AS_KNOWN", zonesOf);
  private final WatchRun restated = new WatchRun("RESTATED", zonesOf);
  private List<WatchModel> models = List.of();

  /** An assembly's tests, which replace what was told of it before. */
  public void put(String assemblyId, List<WatchedTest> tests) {
    List<WatchedTest> before =
        tests.isEmpty() ? byAssembly.remove(assemblyId) : byAssembly.put(assemblyId, tests);
    List<WatchedTest> old = before == null ? List.of() : before;
    replace(asKnown, old, tests, WatchedTest::asKnown);
    replace(restated, old, tests, WatchedTest::standing);
  }

  /** Only what differs is told to the run, so that it need not go through the rest again. */
  private static void replace(
      WatchRun run,
      List<WatchedTest> before,
      List<WatchedTest> after,
      Function<WatchedTest, WatchedOutcome> outcome) {
    Map<WatchedTest, WatchedOutcome> known = new TreeMap<>(WatchedTest.ORDER);
    before.forEach(test -> known.put(test, outcome.apply(test)));
    for (WatchedTest test : after) {
      WatchedOutcome now = outcome.apply(test);
      WatchedOutcome then = known.get(test);
      if (now != null && !now.equals(then)) {
        run.put(test, now);
      }
      if (now != null) {
        known.remove(test);
      }
    }
    known.keySet().forEach(run::remove);
  }

  /** Entries of the ledger; those that hold no model are passed over. */
  public void add(Collection<LedgerEntry> ledger) {
    boolean news = false;
    for (LedgerEntry entry : ledger) {
      if (entry.kind().equals(WatchModel.KIND) && entryIds.add(entry.id())) {
        news |= entries.add(entry);
      }
    }
    if (news) {
      List<WatchModel> now = WatchModel.of(entries);
      if (!now.equals(models)) {
        models = now;
        asKnown.models(now);
        restated.models(now);
      }
    }
  }

  /** The rows; empty while no model was frozen. */
  public Optional<WatchRows> rows(long revision) {
    if (models.isEmpty()) {
      return Optional.empty();
    }
    asKnown.goOn();
    restated.goOn();
    List<WatchAlarmRow> alarms = new ArrayList<>(asKnown.alarms());
    alarms.addAll(restated.alarms());
    return Optional.of(
        new WatchRows("all", revision, alarms, List.of(asKnown.state(), restated.state())));
  }
}
