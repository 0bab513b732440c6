package sealspan.study.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sealspan.stats.watch.MixtureWatch;
import sealspan.stats.watch.Raised;
import sealspan.study.fouling.FoulingModel;
import sealspan.table.WatchAlarmRow;
import sealspan.table.WatchStateRow;

/**
 * One run of the watch: tests in knowledge order, each judged by the last model frozen before it
 * became known. Of a site visit the tests count one by one until a fouling failure is known of it;
 * what else it finds is no news. Tests may be put in and taken out anywhere; the run is then gone
 * through again from a point kept before, which gives the same as from the beginning.
 */
final class WatchRun {
  private static final int SPACING = 512;
  private static final int POINTS = 8;
  private static final double YEAR_DAYS = 365.25;
  private static final Duration PACE_OVER = Duration.ofDays(365);
  private static final Duration SHORTEST_PACE = Duration.ofDays(90);

  private final String name;
  private final TreeMap<WatchedTest, WatchedOutcome> tests = new TreeMap<>(WatchedTest.ORDER);
  private final Map<String, WatchZones> zonesOf;
  private final List<Bet> bets = new ArrayList<>();
  private final List<WatchAlarmRow> alarms = new ArrayList<>();
  private final Deque<Point> points = new ArrayDeque<>();
  private List<WatchModel> models = List.of();
  private Point now = new Point();

  /**
   * A run that has not begun.
   *
   * @param name AS_KNOWN or RESTATED
   * @param zonesOf the zones of each model by its id, which runs share: of many places they are
   *     much; those that are missing are put in
   */
  WatchRun(String name, Map<String, WatchZones> zonesOf) {
    this.name = name;
    this.zonesOf = zonesOf;
  }

  /** Where a run stands after a test; what it has written grows in lists beside it. */
  private static final class Point {
    private WatchedTest last;
    private int begun;
    private MixtureWatch watch;
    private WatchZones zones;
    private FoulingModel probabilities;
    private int betsBeforeModel;
    private int bets;
    private int alarms;
    private int before;
    private int outside;
    private int ofFouledVisits;
    private Set<String> fouledVisits = new HashSet<>();

    private Point copy() {
      Point copy = new Point();
      copy.last = last;
      copy.begun = begun;
      copy.watch = watch == null ? null : watch.copy();
      copy.zones = zones;
      copy.probabilities = probabilities;
      copy.betsBeforeModel = betsBeforeModel;
      copy.bets = bets;
      copy.alarms = alarms;
      copy.before = before;
      copy.outside = outside;
      copy.ofFouledVisits = ofFouledVisits;
      copy.fouledVisits = new HashSet<>(fouledVisits);
      return copy;
    }
  }

  /** Other models: everything is gone through again. */
  void models(List<WatchModel> frozen) {
    models = frozen;
    points.clear();
    now = new Point();
  }

  void put(WatchedTest test, WatchedOutcome outcome) {
    tests.put(test, outcome);
    rewindTo(test);
  }

  void remove(WatchedTest test) {
    if (tests.remove(test) != null) {
      rewindTo(test);
    }
  }

  private void rewindTo(WatchedTest test) {
    if (now.last == null || WatchedTest.ORDER.compare(now.last, test) < 0) {
      return;
    }
    while (!points.isEmpty() && WatchedTest.ORDER.compare(points.getLast().last, test) >= 0) {
      points.removeLast();
    }
    now = points.isEmpty() ? new Point() : points.getLast().copy();
  }

  /** Goes on to the last test. */
  void goOn() {
    bets.subList(now.bets, bets.size()).clear();
    alarms.subList(now.alarms, alarms.size()).clear();
    Map<WatchedTest, WatchedOutcome> ahead =
        now.last == null ? tests : tests.tailMap(now.last, false);
    int steps = 0;
    for (Map.Entry<WatchedTest, WatchedOutcome> next : ahead.entrySet()) {
      step(next.getKey(), next.getValue());
      now.last = next.getKey();
      now.bets = bets.size();
      now.alarms = alarms.size();
      if (++steps % SPACING == 0) {
        keep();
      }
    }
    // The next change mostly comes after all that is known: it goes on from here.
    if (steps > 0 && steps % SPACING != 0 && farFromLastPoint()) {
      keep();
    }
  }

  private boolean farFromLastPoint() {
    return points.isEmpty() || now.bets - points.getLast().bets >= SPACING;
  }

  private void keep() {
    points.addLast(now.copy());
    if (points.size() > POINTS) {
      points.removeFirst();
    }
  }

  private void step(WatchedTest test, WatchedOutcome outcome) {
    while (now.begun < models.size() && models.get(now.begun).frozenAt().isBefore(test.knownAt())) {
      begin(models.get(now.begun));
    }
    if (now.watch == null) {
      now.before++;
      return;
    }
    if (now.fouledVisits.contains(outcome.visit())) {
      now.ofFouledVisits++;
      return;
    }
    if (outcome.fouled()) {
      now.fouledVisits.add(outcome.visit());
    }
    int[] zones = now.zones.holding(outcome);
    now.outside += zones.length == 0 ? 1 : 0;
    double probability =
        now.probabilities.probability(outcome.type(), 1, outcome.exposureDays(), outcome.day());
    bets.add(new Bet(test.knownAt(), test.eventId(), outcome, probability, zones));
    Optional<Raised> raised = now.watch.observe(zones, probability, outcome.fouled());
    raised.ifPresent(alarm -> alarms.add(row(alarm)));
  }

  private void begin(WatchModel model) {
    WatchZones zones = zonesOf.computeIfAbsent(model.id(), id -> new WatchZones(model));
    now.watch =
        now.watch == null
            ? new MixtureWatch(zones.weights(), model.threshold())
            : now.watch.over(zones.weights(), zones.numbersIn(now.zones), model.threshold());
    now.zones = zones;
    now.probabilities = FoulingModel.of(model.coefficients()).orElseThrow();
    now.betsBeforeModel = bets.size();
    now.begun++;
  }

  private WatchAlarmRow row(Raised raised) {
    WatchModel model = models.get(now.begun - 1);
    WatchZone zone = now.zones.zone(raised.zone());
    Bet last = bets.get(bets.size() - 1);
    List<Bet> elsewhere = new ArrayList<>();
    for (Bet bet : bets.subList(now.betsBeforeModel, bets.size())) {
      if (!bet.in(raised.zone())) {
        elsewhere.add(bet);
      }
    }
    Calibration calibration = Calibration.of(elsewhere);
    Bet first = bets.get((int) raised.since() - 1);
    List<String> cases = new ArrayList<>();
    Set<String> members = new HashSet<>(zone.members());
    for (Bet bet : bets.subList((int) raised.since() - 1, bets.size())) {
      WatchedOutcome test = bet.test();
      boolean in = zone.isCircle() ? members.contains(test.place()) : isIn(zone, members, test);
      if (test.fouled() && in) {
        cases.add(bet.eventId());
      }
    }
    double pace = pace(model, last.knownAt());
    return new WatchAlarmRow(
        AlarmId.of(name, last.eventId(), zone.name(), model.id(), raised.test()),
        name,
        last.knownAt(),
        last.eventId(),
        model.id(),
        model.frozenAt(),
        zone.words(),
        zone.isCircle() ? "CIRCLE" : "WATER_ZONE",
        zone.zoneId(),
        zone.isCircle() ? zone.centre().siteId().strip() : null,
        zone.isCircle() ? zone.centre().latitude() : null,
        zone.isCircle() ? zone.centre().longitude() : null,
        zone.isCircle() && zone.centre().isPlaced() ? zone.radiusKm() : null,
        zone.members().size(),
        String.join(", ", zone.members().stream().map(String::strip).toList()),
        raised.multiplier(),
        raised.share(),
        raised.evidence(),
        model.threshold(),
        raised.tests(),
        pace,
        model.threshold() / pace,
        first.knownAt(),
        first.test().day(),
        raised.inZone(),
        raised.cases(),
        raised.expected(),
        String.join(", ", cases),
        calibration.tests(),
        calibration.cases(),
        calibration.expected(),
        calibration.ratio(),
        calibration.lower(),
        calibration.upper(),
        calibration.promise(),
        calibration.words());
  }

  private static boolean isIn(WatchZone zone, Set<String> members, WatchedOutcome test) {
    return test.zoneId() != null
        ? test.zoneId().equals(zone.zoneId())
        : members.contains(test.place());
  }

  /** Tests a year: of the last year once the watch is old enough, before that as the fit knew. */
  private double pace(WatchModel model, Instant at) {
    Instant from = at.minus(PACE_OVER);
    Instant begun = bets.get(0).knownAt();
    Duration over = Duration.between(begun.isAfter(from) ? begun : from, at);
    if (over.compareTo(SHORTEST_PACE) < 0) {
      return model.testsPerYear();
    }
    int recent = 0;
    for (int i = bets.size() - 1; i >= 0 && bets.get(i).knownAt().isAfter(from); i--) {
      recent++;
    }
    return recent * YEAR_DAYS * Duration.ofDays(1).toSeconds() / over.toSeconds();
  }

  List<WatchAlarmRow> alarms() {
    return List.copyOf(alarms);
  }

  /** Where it stands, by the last model that is frozen; there is one at least. */
  WatchStateRow state() {
    WatchModel model = models.get(models.size() - 1);
    WatchZones zones = zonesOf.computeIfAbsent(model.id(), id -> new WatchZones(model));
    boolean begun = now.begun == models.size();
    List<Bet> since = begun ? bets.subList(now.betsBeforeModel, bets.size()) : List.of();
    Calibration calibration = Calibration.of(since);
    Bet last = bets.isEmpty() ? null : bets.get(bets.size() - 1);
    double pace = last == null ? model.testsPerYear() : pace(model, last.knownAt());
    List<String> unplaced = zones.withoutPlace();
    return new WatchStateRow(
        name,
        models.size(),
        model.id(),
        model.frozenAt(),
        zones.sites(),
        unplaced.size(),
        String.join(", ", unplaced.subList(0, Math.min(20, unplaced.size()))),
        zones.size(),
        bets.size(),
        now.outside,
        now.ofFouledVisits,
        now.before,
        alarms.size(),
        now.watch == null ? 0 : now.watch.evidence(),
        model.threshold(),
        now.watch == null ? 0 : now.watch.testsSinceAlarm(),
        pace,
        model.threshold() / pace,
        last == null ? null : last.knownAt(),
        calibration.tests(),
        calibration.cases(),
        calibration.expected(),
        calibration.ratio(),
        calibration.lower(),
        calibration.upper(),
        calibration.chance(),
        calibration.promise(),
        calibration.words());
  }
}
