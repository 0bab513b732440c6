package sealspan.study.fouling;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sealspan.stats.scan.Visits;

/**
 * Visits with coordinates, laid out in places and periods.
 *
 * @param visits the visits, ordered
 * @param places where they were
 * @param periods when they were
 * @param counted the same for the scan; strata are of season and type
 */
record ScanLayout(
    List<FoulingVisit> visits, ScanPlaces places, ScanPeriods periods, Visits counted) {

  /** The periods from the first to the last visit. */
  static ScanPeriods periods(List<FoulingVisit> visits) {
    LocalDate first = visits.isEmpty() ? LocalDate.EPOCH : visits.get(0).day();
    LocalDate last = visits.isEmpty() ? first : visits.get(visits.size() - 1).day();
    return ScanPeriods.of(first, last);
  }

  /** Lays visits out, with the probabilities of a model. */
  static ScanLayout of(
      List<FoulingVisit> visits, FoulingModel model, ScanPlaces places, ScanPeriods periods) {
    int n = visits.size();
    int[] place = new int[n];
    int[] period = new int[n];
    int[] stratum = new int[n];
    boolean[] found = new boolean[n];
    double[] probability = new double[n];
    Map<String, Integer> strata = new HashMap<>();
    for (int i = 0; i < n; i++) {
      FoulingVisit visit = visits.get(i);
      place[i] = places.placeOfSite()[places.siteOfVisit()[i]];
      period[i] = periods.of(visit.day());
      String season = "quarter " + (visit.day().getMonthValue() - 1) / 3;
      stratum[i] = strata.computeIfAbsent(season + " " + visit.type(), key -> strata.size());
      found[i] = visit.fouled();
      probability[i] = model.probability(visit);
    }
    return new ScanLayout(
        visits,
        places,
        periods,
        new Visits(places.places(), periods.count(), place, period, stratum, found, probability));
  }

  /** Number of strata. */
  int strata() {
    int strata = 0;
    for (int s : counted.stratum()) {
      strata = Math.max(strata, s + 1);
    }
    return strata;
  }
}
