package sealspan.study.fouling;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What has to be borne in mind with a look for clusters. */
public final class ExplorationCautions {
  /** Invented records with a route and without any cluster, by which the warning was measured. */
  static final int ROUTED_RECORDS = 60;

  /** Of these, those in which times dealt out anew raised an alarm at 5 percent. */
  static final int ROUTED_ALARMS = 32;

  private static final int LOOKS_FOR_EXAMPLE = 8;

  private ExplorationCautions() {}

  /** The warning that goes with times dealt out anew. */
  public static String route() {
    return "Tests follow a route, area by area and month by month, and times dealt out anew take the"
        + " route for clusters: of "
        + ROUTED_RECORDS
        + " invented records with a route and without any cluster, "
        + ROUTED_ALARMS
        + " raised a false alarm where 3 were meant to. Trust a look against the tests that were"
        + " made instead.";
  }

  static List<String> of(ExplorationChoice choice) {
    List<String> cautions = new ArrayList<>();
    cautions.add(looks(choice));
    if (choice.permuted()) {
      cautions.add(route());
    }
    switch (choice.shape()) {
      case CIRCLES ->
          cautions.add(
              "Circles miss what is long and thin, such as the sites along one main, or find a part"
                  + " of it.");
      case ELLIPSES ->
          cautions.add(
              "An ellipse may follow a main by chance: its direction is one of six that were tried.");
      case SUBSETS ->
          cautions.add(
              "Only sites found fouled in its time are ever chosen, and sites between them are not"
                  + " in it: the number expected is far too small and the risk far too large, and only"
                  + " p allows for the choice. This search finds winding clusters and misses round"
                  + " ones.");
      case PIPES ->
          cautions.add(
              "The pipes and closed valves are those of the file, whatever stood open at the time;"
                  + " distance is not direction of flow. A closed valve drawn on a junction closes one"
                  + " of its pipes only: draw it on the pipe.");
    }
    cautions.add(
        "p says nothing of the cause: a cluster may be a tester, a maker or a batch of parts"
            + " as well as the water.");
    cautions.add(
        "The ends of a cluster in place and time are uncertain, and the size of the first one is too"
            + " large on average.");
    return cautions;
  }

  private static String looks(ExplorationChoice choice) {
    String chance =
        String.format(
            Locale.ROOT,
            "%.0f %%",
            100 * (1 - StrictMath.pow(1 - FoulingScan.LEVEL, LOOKS_FOR_EXAMPLE)));
    return "This is an exploration. p allows for all places and times of this one look, not for"
        + " looking again with another shape, other times or another record: "
        + LOOKS_FOR_EXAMPLE
        + " separate looks at 5 % find something in about "
        + chance
        + " of records in which nothing clusters. Settle how to look before looking, or share the 5 %"
        + " out with --looks. "
        + (choice.looks() == 1
            ? "Here it was taken as the only look."
            : "Here they were shared out among "
                + choice.looks()
                + " looks: p at most "
                + ExplorationWords.plain(choice.level())
                + ".");
  }
}
