package sealspan.study;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import sealspan.table.AssemblyRows;
import sealspan.table.CurveRow;
import sealspan.table.DriftRow;
import sealspan.table.FitRow;
import sealspan.table.FitRows;
import sealspan.table.RepairEpisodeRow;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

/** The estimates of a stratum from the histories of its assemblies; pure functions. */
public final class Fits {
  /** Grows whenever the same input may give other figures. */
  public static final String CODE_VERSION = "16";

  /**
   * With fewer tests the failures of all assemblies tell a forecast more than those of the type.
   */
  public static final int FEWEST_TESTS_OF_A_TYPE = 20;

  /** The stratum of all assemblies. */
  static final String ALL = "all";

  private static final String COMPONENT = "component=";

  private Fits() {}

  /**
   * The strata that an assembly belongs to: {@code all}; {@code type=...}; and, for the seals that
   * it has, {@code component=...} and {@code type=... component=...}.
   */
  public static List<String> strataOf(AssemblyRows rows) {
    TreeSet<String> strata = new TreeSet<>();
    String type = rows.assembly().type();
    strata.add(ALL);
    if (type != null) {
      strata.add("type=" + type);
    }
    for (SealRow seal : rows.seals()) {
      strata.add(COMPONENT + seal.component());
      if (type != null) {
        strata.add("type=" + type + " " + COMPONENT + seal.component());
      }
    }
    return List.copyOf(strata);
  }

  /** The component whose seals make a stratum; null for strata of whole assemblies. */
  static String component(String stratum) {
    int at = stratum.indexOf(COMPONENT);
    return at < 0 ? null : stratum.substring(at + COMPONENT.length());
  }

  /**
   * The fit of one stratum. A stratum of whole assemblies gets the prior of failure rates and the
   * mean number of seal replacements; a stratum of one component gets the life of its seals.
   *
   * @param stratum one of {@link #strataOf}
   * @param members of its assemblies as of the cut at least the rows that it reads ({@link
   *     NeededRows}); the digest is of those that are there
   * @param cut the cut
   */
  public static FitRows of(String stratum, Members members, FitCut cut) {
    String component = component(stratum);
    FitRow fit =
        new FitRow(
            stratum,
            cut.id(),
            cut.offsets(),
            cut.newestRecordedAt(),
            members.size(),
            digest(members),
            CODE_VERSION);
    ReplacementHistories histories = ReplacementHistories.of(component, members);
    Replacements replacements = Replacements.of(stratum, component, histories);
    List<RepairEpisodeRow> episodes = RepairEffects.episodes(component, members);
    RepairEffects effects = RepairEffects.of(stratum, episodes);
    List<SealLifeRow> figures = new ArrayList<>(replacements.figures());
    List<CurveRow> curves = new ArrayList<>(replacements.curve());
    if (component != null) {
      SealLives lives = SealLives.of(stratum, component, members);
      figures.addAll(lives.figures());
      curves.addAll(lives.curves());
    }
    RatePriors rates = component == null ? RatePriors.of(stratum, members) : null;
    List<DriftRow> drifts =
        component == null && !stratum.equals(ALL) ? Drifts.of(stratum, members) : List.of();
    return new FitRows(
        stratum,
        cut.revision(),
        fit,
        rates == null ? null : rates.prior(),
        rates == null ? List.of() : rates.nodes(),
        rates == null ? List.of() : rates.effects(),
        rates == null ? List.of() : rates.powers(),
        figures,
        curves,
        effects.figures(),
        effects.balance(),
        drifts,
        component == null ? SuddenFailures.of(stratum, members, Drifts.models(drifts)) : null,
        Trends.of(stratum, component, members),
        YearlyRates.of(stratum, component, members),
        ReplacementComparisons.of(stratum, histories),
        Ageing.of(stratum, component, members),
        Retests.of(stratum, episodes));
  }

  /** Digest of the rows, in order of assembly. */
  private static String digest(Members members) {
    try {
      MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
      members.packed(sha256::update);
      return HexFormat.of().formatHex(sha256.digest(), 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
