package sealspan.study.fouling;

import static sealspan.study.fouling.ExplorationWords.counted;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.table.FoulingScanRow;

/** What a look for clusters rests on: n, what was left out, and how it was made. */
public final class ExplorationNotes {
  private static final int MOST_FAR_NAMES = 50;

  private ExplorationNotes() {}

  /** The lines beneath an answer, cautions last. */
  public static List<String> of(Exploration found) {
    List<String> notes = new ArrayList<>();
    FoulingScanRow scan = found.scan();
    if (scan != null) {
      notes.add(n(found, scan));
    }
    notes.add(leftOut(found, scan));
    notes.add(whatCounts(found.visits()));
    if (scan != null) {
      if (scan.visits() > 0) {
        notes.add(expected(found, scan));
        notes.add(lookedAt(found, scan));
      }
      if (found.pipes() != null) {
        notes.add(pipes(found));
      }
      if (!found.clusters().isEmpty()) {
        notes.add(howP(found, scan));
      }
    }
    notes.add(
        "Worked out anew from the events named above, with a fit of its own: the numbers of clusters"
            + " here are not those of 'ask clusters', which shows the last fit of the engine.");
    ExplorationCautions.of(found.choice()).forEach(text -> notes.add("Caution: " + text));
    return notes;
  }

  private static String n(Exploration found, FoulingScanRow scan) {
    return "n = "
        + scan.visits()
        + (found.pipes() == null ? " site visits with coordinates" : " visits to sites near a pipe")
        + ", "
        + scan.foulingVisits()
        + " with a fouling failure, at "
        + counted(scan.sites(), "site")
        + (scan.visits() == 0 ? "" : ", " + days(found));
  }

  private static String days(Exploration found) {
    List<FoulingVisit> visits = found.visits().visits();
    return visits.get(0).day() + " to " + visits.get(visits.size() - 1).day();
  }

  private static String leftOut(Exploration found, FoulingScanRow scan) {
    List<String> parts = new ArrayList<>();
    if (scan != null) {
      parts.add(
          scan.sitesWithoutPlace() == 0
              ? "no visit for want of coordinates"
              : visits(scan.visitsWithoutPlace(), scan.foulingVisitsWithoutPlace())
                  + " to "
                  + counted(scan.sitesWithoutPlace(), "site")
                  + " without coordinates"
                  + named(
                      scan.namesWithoutPlace(), scan.sitesWithoutPlace() > FoulingScan.MOST_NAMES));
    }
    PipesSeen pipes = found.pipes();
    if (pipes != null) {
      parts.add(
          visits(pipes.farVisits(), pipes.farFouled())
              + " to "
              + counted(pipes.farSites().size(), "site")
              + String.format(
                  Locale.ROOT,
                  " farther than %.0f m from every open pipe",
                  found.choice().pipeWithinM())
              + named(
                  FoulingScan.names(pipes.farSites(), MOST_FAR_NAMES),
                  pipes.farSites().size() > MOST_FAR_NAMES));
    }
    int unclassified = found.visits().visits().size() - found.visits().classified().size();
    parts.add(
        counted(unclassified, "visit")
            + " with a failure that could not be classified (no mechanism recorded, and it did not"
            + " pass after cleaning alone)");
    parts.add(
        counted(found.roundsWithoutPass(), "routine as-found round")
            + " of all days that no earlier pass is known for");
    if (found.choice().since() != null || found.choice().until() != null) {
      parts.add(counted(found.visitsOutside(), "visit") + " on other days");
    }
    return "Left out: " + String.join("; ", parts) + ".";
  }

  private static String visits(int visits, int fouled) {
    return counted(visits, "visit") + " (" + fouled + " with fouling)";
  }

  private static String named(String names, boolean more) {
    return names == null ? "" : " (" + names + (more ? ", ..." : "") + ")";
  }

  private static String whatCounts(FoulingVisits visits) {
    return "What counts: "
        + FoulingFailure.RULE
        + " Of "
        + counted(visits.failedRounds(), "failed round")
        + " "
        + visits.foulingRounds()
        + " were by fouling, and "
        + visits.unclassifiedRounds()
        + " could not be classified.";
  }

  private static String expected(Exploration found, FoulingScanRow scan) {
    if (found.choice().permuted()) {
      return "Expected: the fouling failures of these sites at all times, times the share of all"
          + " fouling failures that fell into the time. Each site keeps its number and each period"
          + " its own; tests that found nothing are not looked at.";
    }
    FoulingFit fit = found.fit();
    return "Expected: the probability of each visit to find fouling, by "
        + (fit.because() == null
            ? "time since the last pass, number of assemblies, type and season"
            : "one rate for all (" + fit.because() + ")")
        + ", without any effect of place; within "
        + scan.strata()
        + (scan.strata() == 1 ? " stratum" : " strata")
        + " of season and type the number of cases is taken as given, so a route of tests is no"
        + " cluster.";
  }

  private static String lookedAt(Exploration found, FoulingScanRow scan) {
    String places =
        scan.places()
            + " places"
            + (scan.places() < scan.sites()
                ? String.format(
                    Locale.ROOT,
                    " (neighbouring sites put together, up to %.2f km)",
                    scan.placeRadiusKm())
                : "");
    String zones =
        switch (found.choice().shape()) {
          case CIRCLES -> "circles about " + places;
          case ELLIPSES ->
              "circles and ellipses, 1.5, 2 and 3 times as long as wide in 6 directions, about "
                  + places
                  + "; the score of an ellipse is lowered by the root of 4 s / (s + 1)^2, s times as"
                  + " long as wide";
          case SUBSETS ->
              "all choices among the sites of each ball of up to "
                  + found.mostPlaces()
                  + " places about "
                  + places
                  + " (the fast search over subsets, which gives the best of them)";
          case PIPES ->
              "the sites within a distance along the pipes about each of "
                  + counted(scan.sites(), "site")
                  + (found.mostPlaces() < scan.sites()
                      ? ", up to the nearest " + found.mostPlaces()
                      : "");
        };
    String times =
        found.choice().wholeTime()
            ? "over the whole time only"
            : "in times of up to "
                + scan.longestWindowMonths()
                + " months in steps of "
                + scan.periodMonths()
                + (found.choice().permuted() ? "" : ", and the whole time");
    return "Looked at: "
        + zones
        + "; zones of up to "
        + Math.round(100 * scan.largestShare())
        + " % of what is expected; "
        + times
        + ": "
        + scan.cylinders()
        + (found.choice().shape() == ZoneShape.SUBSETS
            ? " places of balls and times in all."
            : " in all, with at least one case expected in each.");
  }

  private static String pipes(Exploration found) {
    PipeLines drawn = found.choice().pipes();
    PipesSeen seen = found.pipes();
    List<Integer> parts = found.partSites();
    return String.format(
            Locale.ROOT,
            "Pipes: %s open, %.1f km in all, %d closed, %s",
            counted(drawn.open().size(), "line"),
            seen.lengthKm(),
            drawn.closedLines(),
            counted(seen.valves().size(), "closed valve"))
        + (seen.farValves() == 0
            ? ""
            : " (" + seen.farValves() + " more are too far from every pipe and close nothing)")
        + (drawn.passedOver() == 0
            ? ""
            : ", "
                + counted(drawn.passedOver(), "feature")
                + " passed over (open valves, or no geometry)")
        + ". Lines join where they have a corner in common, to a millionth of a degree (0.1 m)."
        + (parts.isEmpty()
            ? ""
            : parts.size() == 1
                ? " All sites hang together."
                : " The sites hang on "
                    + parts.size()
                    + " parts that water does not pass between, with "
                    + largest(parts)
                    + " sites"
                    + (parts.size() > 5 ? " in the largest five" : "")
                    + "; a zone never holds sites of two parts.");
  }

  private static String largest(List<Integer> parts) {
    return String.join(", ", parts.stream().limit(5).map(String::valueOf).toList());
  }

  private static String howP(Exploration found, FoulingScanRow scan) {
    return "p: share of "
        + scan.replicates()
        + " replicates (seed "
        + scan.seed()
        + ") with a score as large anywhere in this look; Gumbel extrapolated: from the tail of their"
        + " scores, where no replicate was as large. Each cluster is looked for after those before it"
        + " were taken out. There is no interval about a relative risk: it is that of the zone that"
        + " was chosen for being the worst.";
  }
}
