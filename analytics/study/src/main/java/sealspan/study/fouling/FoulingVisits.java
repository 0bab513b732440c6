package sealspan.study.fouling;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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

  /** The visits from the rows of assemblies, in any order. */
  public static FoulingVisits of(List<AssemblyRows> assemblies) {
    return of(assemblies, LocalDate.MIN, LocalDate.MAX);
  }

  /**
   * The visits of some days from the rows of assemblies, in any order.
   *
   * @param since first day
   * @param until last day
   */
  static FoulingVisits of(List<AssemblyRows> assemblies, LocalDate since, LocalDate until) {
    List<AssemblyRows> sorted = new ArrayList<>(assemblies);
    sorted.sort(Comparator.comparing(AssemblyRows::assemblyId));
    Map<String, double[]> places = places(sorted);
    Map<LocalDate, Map<String, Gathered>> byDay = new TreeMap<>();
    int[] counts = new int[4];
    for (AssemblyRows rows : sorted) {
      for (TestRow round : rows.tests()) {
        if (countsIn(round) && !round.day().isBefore(since) && !round.day().isAfter(until)) {
          count(round, counts);
          String key = round.siteId() == null ? " " + round.assemblyId() : round.siteId();
          byDay
              .computeIfAbsent(round.day(), day -> new TreeMap<>())
              .computeIfAbsent(key, k -> new Gathered())
              .add(round);
        }
      }
    }
    List<FoulingVisit> visits = new ArrayList<>();
    byDay.values().forEach(day -> day.values().forEach(v -> visits.add(v.visit(places))));
    return new FoulingVisits(List.copyOf(visits), counts[0], counts[1], counts[2], counts[3]);
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

  /** Coordinates by site: those that the first assembly of the site has. */
  private static Map<String, double[]> places(List<AssemblyRows> sorted) {
    Map<String, double[]> places = new TreeMap<>();
    for (AssemblyRows rows : sorted) {
      AssemblyRow assembly = rows.assembly();
      if (assembly.siteId() != null
          && assembly.latitude() != null
          && assembly.longitude() != null) {
        places.putIfAbsent(
            assembly.siteId(), new double[] {assembly.latitude(), assembly.longitude()});
      }
    }
    return places;
  }

  /** The visits that are a case or none: without those that could not be classified. */
  public List<FoulingVisit> classified() {
    return visits.stream().filter(v -> v.outcome() != FoulingFailure.UNCLASSIFIED).toList();
  }

  /** The rounds of one visit. */
  private static final class Gathered {
    private final List<TestRow> rounds = new ArrayList<>(2);

    void add(TestRow round) {
      rounds.add(round);
    }

    FoulingVisit visit(Map<String, double[]> places) {
      TestRow first = rounds.get(0);
      Set<String> assemblies = new TreeSet<>();
      Set<String> visitIds = new TreeSet<>();
      Set<String> types = new TreeSet<>();
      List<String> events = new ArrayList<>(rounds.size());
      String zone = null;
      long days = 0;
      Instant recorded = null;
      FoulingFailure outcome = FoulingFailure.NOT_FOULED;
      for (TestRow round : rounds) {
        assemblies.add(round.assemblyId());
        events.add(round.eventId());
        days += round.exposureDays();
        outcome = outcome.and(FoulingFailure.of(round));
        zone = zone == null ? round.zoneId() : zone;
        if (round.visitId() != null) {
          visitIds.add(round.visitId());
        }
        if (round.type() != null) {
          types.add(round.type());
        }
        if (round.recordedAt() != null
            && (recorded == null || recorded.isBefore(round.recordedAt()))) {
          recorded = round.recordedAt();
        }
      }
      double[] at = first.siteId() == null ? null : places.get(first.siteId());
      return new FoulingVisit(
          first.day(),
          first.siteId(),
          visitIds.isEmpty() ? null : visitIds.iterator().next(),
          zone,
          at == null ? null : at[0],
          at == null ? null : at[1],
          List.copyOf(assemblies),
          List.copyOf(events),
          types.isEmpty()
              ? null
              : types.size() == 1 ? types.iterator().next() : FoulingVisit.SEVERAL_TYPES,
          days,
          outcome,
          recorded);
    }
  }
}
