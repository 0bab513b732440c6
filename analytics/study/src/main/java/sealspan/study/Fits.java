package sealspan.study;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import sealspan.avro.TableCodec;
import sealspan.table.AssemblyRows;
import sealspan.table.CurveRow;
import sealspan.table.DriftRow;
import sealspan.table.FitRow;
import sealspan.table.FitRows;
import sealspan.table.SealLifeRow;
import sealspan.table.SealRow;

/** The estimates of a stratum from the histories of its assemblies; pure functions. */
public final class Fits {
  /** Grows whenever the same input may give other figures. */
  public static final String CODE_VERSION = "15";

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

  /** Whether the fit of a stratum reads single readings: the drifts of one type do. */
  public static boolean readsReadings(String stratum) {
    return !stratum.equals(ALL) && !stratum.contains(COMPONENT);
  }

  /**
   * The part of an assembly's rows that fits read, which is less than half of them.
   *
   * @param withReadings whether its readings belong to it ({@link #readsReadings})
   */
  public static AssemblyRows needed(AssemblyRows rows, boolean withReadings) {
    return new AssemblyRows(
        rows.assemblyId(),
        0,
        rows.assembly(),
        rows.tests(),
        withReadings
            ? rows.readings().stream().filter(reading -> reading.run() != null).toList()
            : List.of(),
        rows.exposures(),
        rows.repairs(),
        rows.seals(),
        List.of(),
        List.of(),
        List.of(),
        null,
        rows.repairEpisodes(),
        List.of(),
        null,
        List.of());
  }

  /**
   * The fit of one stratum. A stratum of whole assemblies gets the prior of failure rates and the
   * mean number of seal replacements; a stratum of one component gets the life of its seals.
   *
   * @param stratum one of {@link #strataOf}
   * @param members the rows of its assemblies as of the cut, in any order
   * @param cut the cut
   */
  public static FitRows of(String stratum, List<AssemblyRows> members, FitCut cut) {
    List<AssemblyRows> sorted = new ArrayList<>(members);
    sorted.sort(Comparator.comparing(AssemblyRows::assemblyId));
    int at = stratum.indexOf(COMPONENT);
    String component = at < 0 ? null : stratum.substring(at + COMPONENT.length());
    FitRow fit =
        new FitRow(
            stratum,
            cut.id(),
            cut.offsets(),
            cut.newestRecordedAt(),
            sorted.size(),
            digest(stratum, sorted),
            CODE_VERSION);
    Replacements replacements = Replacements.of(stratum, component, sorted);
    RepairEffects effects = RepairEffects.of(stratum, component, sorted);
    List<SealLifeRow> figures = new ArrayList<>(replacements.figures());
    List<CurveRow> curves = new ArrayList<>(replacements.curve());
    if (component != null) {
      SealLives lives = SealLives.of(stratum, component, sorted);
      figures.addAll(lives.figures());
      curves.addAll(lives.curves());
    }
    RatePriors rates = component == null ? RatePriors.of(stratum, sorted) : null;
    List<DriftRow> drifts =
        component == null && !stratum.equals(ALL) ? Drifts.of(stratum, sorted) : List.of();
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
        component == null ? SuddenFailures.of(stratum, sorted, Drifts.models(drifts)) : null,
        Trends.of(stratum, component, sorted),
        YearlyRates.of(stratum, component, sorted),
        ReplacementComparisons.of(stratum, component, sorted),
        Ageing.of(stratum, component, sorted),
        Retests.of(stratum, component, sorted));
  }

  /** Digest of the rows that the estimators read, in order of assembly. */
  private static String digest(String stratum, List<AssemblyRows> sorted) {
    try {
      MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
      for (AssemblyRows rows : sorted) {
        sha256.update(TableCodec.encode(needed(rows, readsReadings(stratum))));
      }
      return HexFormat.of().formatHex(sha256.digest(), 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
