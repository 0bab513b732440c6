package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.study.Members;
import sealspan.table.AssemblyRow;
import sealspan.table.AssemblyRows;
import sealspan.table.TestRow;

/**
 * The site visits of all assemblies, and what was counted on the way.
 *
 * @param visits ordered by day, then site; those that could not be classified too
 * @param rounds their rounds
 * @param failedRounds of these, failed
 * @param foulingRounds of the failed rounds, fouling failures
 * @param unclassifiedRounds of the failed rounds, those that could not be classified
 */
public record FoulingVisits(
    List<FoulingVisit> visits,
    int rounds,
    int failedRounds,
    int foulingRounds,
    int unclassifiedRounds) {

  /** The visits from the rows of assemblies. */
  public static FoulingVisits of(Members assemblies) {
    return of(assemblies, LocalDate.MIN, LocalDate.MAX);
  }

  /**
   * The visits of some days from the rows of assemblies.
   *
   * @param since first day
   * @param until last day
   */
  static FoulingVisits of(Members assemblies, LocalDate since, LocalDate until) {
    Map<String, Double[]> places = new HashMap<>();
    TreeMap<LocalDate, Map<String, Gathered>> byDay = new TreeMap<>();
    int[] counts = new int[4];
    for (AssemblyRows rows : assemblies) {
      addPlace(rows.assembly(), places);
      for (TestRow round : rows.tests()) {
        if (countsIn(round) && !round.day().isBefore(since) && !round.day().isAfter(until)) {
          count(round, counts);
          String key = round.siteId() == null ? " " + round.assemblyId() : round.siteId();
          byDay
              .computeIfAbsent(round.day(), day -> new TreeMap<>())
              .computeIfAbsent(key, k -> new Gathered(round))
              .add(round);
        }
      }
    }
    List<FoulingVisit> visits = new ArrayList<>();
    while (!byDay.isEmpty()) {
      Map.Entry<LocalDate, Map<String, Gathered>> day = byDay.pollFirstEntry();
      day.getValue().values().forEach(v -> visits.add(v.visit(day.getKey(), places)));
    }
    return new FoulingVisits(
        Collections.unmodifiableList(visits), counts[0], counts[1], counts[2], counts[3]);
  }

  /**
   * Whether a round is one of a visit: a routine as-found round that counts in failure rates and
   * has an exposure of at least a day.
   */
  static boolean countsIn(TestRow round) {
    return round.counted()
        && round.phase().equals("AS_FOUND")
        && round.exposureDays() != null
        && round.exposureDays() > 0;
  }

  private static void count(TestRow round, int[] counts) {
    counts[0]++;
    counts[1] += FoulingFailure.failed(round) ? 1 : 0;
    counts[2] += FoulingFailure.of(round) == FoulingFailure.FOULED ? 1 : 0;
    counts[3] += FoulingFailure.of(round) == FoulingFailure.UNCLASSIFIED ? 1 : 0;
  }

  /** Takes in the coordinates of a site: those that its first assembly has. */
  private static void addPlace(AssemblyRow assembly, Map<String, Double[]> places) {
    if (assembly.siteId() != null && assembly.latitude() != null && assembly.longitude() != null) {
      places.putIfAbsent(
          assembly.siteId(), new Double[] {assembly.latitude(), assembly.longitude()});
    }
  }

  /** The visits that are a case or none: without those that could not be classified. */
  public List<FoulingVisit> classified() {
    return visits.stream().filter(v -> v.outcome() != FoulingFailure.UNCLASSIFIED).toList();
  }

  /** What is known so far of one visit. */
  private static final class Gathered {
    private final String siteId;
    private final String assemblyId;
    private String zoneId;
    private String type;
    private int rounds;
    private long days;
    private FoulingFailure outcome = FoulingFailure.NOT_FOULED;

    Gathered(TestRow first) {
      siteId = first.siteId();
      assemblyId = first.assemblyId();
    }

    void add(TestRow round) {
      rounds++;
      days += round.exposureDays();
      outcome = outcome.and(FoulingFailure.of(round));
      zoneId = zoneId == null ? round.zoneId() : zoneId;
      if (type == null) {
        type = round.type();
      } else if (round.type() != null && !round.type().equals(type)) {
        type = FoulingVisit.SEVERAL_TYPES;
      }
    }

    FoulingVisit visit(LocalDate day, Map<String, Double[]> places) {
      Double[] at = siteId == null ? null : places.get(siteId);
      return new FoulingVisit(
          day,
          siteId,
          assemblyId,
          zoneId,
          at == null ? null : at[0],
          at == null ? null : at[1],
          type,
          rounds,
          days,
          outcome);
    }
  }
}
