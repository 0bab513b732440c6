package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.stats.Estimate;
import sealspan.stats.Interval;
import sealspan.stats.PointEstimate;
import sealspan.stats.ageing.AgeingFit;
import sealspan.stats.ageing.AgeingFit.Frailty;
import sealspan.stats.ageing.AgeingFit.Limits;
import sealspan.stats.ageing.AgeingFit.Prior;
import sealspan.stats.ageing.RepairedLife;
import sealspan.stats.ageing.VirtualAge;
import sealspan.table.AgeingRow;
import sealspan.table.AssemblyRows;

/**
 * How the components of a stratum age, and how much of the age cleaning and a new seal leave, by
 * both models of virtual age. Components whose first seal has an unknown origin are left out and
 * counted.
 */
final class Ageing {
  private static final double LEVEL = 0.95;

  /** Twice the gain in log-likelihood that speaks for frailty at .05, on the boundary. */
  private static final double FRAILTY_GAIN = 2.71;

  /** With more components the curvature tells as much as the profile. */
  private static final int MOST_PROFILED = 5_000;

  private final String stratum;
  private final List<RepairedLife> lives = new ArrayList<>();
  private int assemblies;
  private int failures;
  private int leftOut;

  private Ageing(String stratum, String component, Members members) {
    this.stratum = stratum;
    for (AssemblyRows rows : members) {
      int before = lives.size();
      for (SealPosition position : SealPosition.of(rows, component)) {
        if (position.originKnown()) {
          RepairedLife life = ComponentLife.of(rows, position);
          failures += life.failures();
          lives.add(life);
        } else {
          leftOut++;
        }
      }
      assemblies += lives.size() > before ? 1 : 0;
    }
  }

  /** One row for each model; none for whole assemblies, whose components age apart. */
  static List<AgeingRow> of(String stratum, String component, Members members) {
    if (component == null) {
      return List.of();
    }
    return new Ageing(stratum, component, members).rows();
  }

  private List<AgeingRow> rows() {
    List<AgeingRow> rows = new ArrayList<>();
    if (failures < AgeingFit.FEWEST_FAILURES) {
      String because =
          "not identified: "
              + failures
              + " failures of "
              + lives.size()
              + " components of known origin, and at least "
              + AgeingFit.FEWEST_FAILURES
              + " are needed";
      for (VirtualAge model : VirtualAge.values()) {
        rows.add(missing(model, because));
      }
      return rows;
    }
    List<Estimate<AgeingFit>> fits = new ArrayList<>();
    double best = Double.POSITIVE_INFINITY;
    for (VirtualAge model : VirtualAge.values()) {
      Estimate<AgeingFit> fit = fit(model);
      fits.add(fit);
      if (fit instanceof Estimate.Identified<AgeingFit> identified) {
        best = Math.min(best, identified.value().aic());
      }
    }
    for (VirtualAge model : VirtualAge.values()) {
      Estimate<AgeingFit> fit = fits.get(model.ordinal());
      rows.add(
          fit instanceof Estimate.Identified<AgeingFit> identified
              ? row(model, identified.value(), identified.value().aic() == best)
              : missing(
                  model, "not identified: " + ((Estimate.NotIdentified<AgeingFit>) fit).because()));
    }
    return rows;
  }

  /** With frailty where it is seen, without where not. */
  private Estimate<AgeingFit> fit(VirtualAge model) {
    Estimate<AgeingFit> alike = AgeingFit.of(lives, model, Frailty.NONE, Prior.WEAK);
    Estimate<AgeingFit> frail = AgeingFit.of(lives, model, Frailty.LOGNORMAL, Prior.WEAK);
    boolean seen =
        frail instanceof Estimate.Identified<AgeingFit> f
            && alike instanceof Estimate.Identified<AgeingFit> a
            && 2 * (f.value().logLikelihood() - a.value().logLikelihood()) > FRAILTY_GAIN;
    return seen ? frail : alike;
  }

  private AgeingRow row(VirtualAge model, AgeingFit fit, boolean better) {
    Limits limits = lives.size() <= MOST_PROFILED ? Limits.PROFILE : Limits.CURVATURE;
    PointEstimate shape = fit.shape(LEVEL, limits);
    PointEstimate scale = fit.scale(LEVEL, limits);
    PointEstimate kept = value(fit.shareLeft(ComponentLife.SEAL_KEPT, LEVEL, limits));
    PointEstimate renewed = value(fit.shareLeft(ComponentLife.SEAL_RENEWED, LEVEL, limits));
    Estimate<PointEstimate> separates = fit.separates(LEVEL, limits);
    boolean told = separates instanceof Estimate.Identified<PointEstimate>;
    return new AgeingRow(
        stratum,
        model.name(),
        better,
        lives.size(),
        assemblies,
        failures,
        leftOut,
        shape.value(),
        lower(shape),
        upper(shape),
        scale.value(),
        lower(scale),
        upper(scale),
        kept == null ? null : kept.value(),
        lower(kept),
        upper(kept),
        renewed == null ? null : renewed.value(),
        lower(renewed),
        upper(renewed),
        fit.frailtyVariance(),
        fit.logLikelihood(),
        fit.aic(),
        fit.starts(),
        fit.startsAtTop(),
        told && kept != null && renewed != null,
        note(separates, kept, renewed, limits));
  }

  private static String note(
      Estimate<PointEstimate> separates, PointEstimate kept, PointEstimate renewed, Limits limits) {
    String words;
    if (separates instanceof Estimate.NotIdentified<PointEstimate> not) {
      words = "cannot separate clean from replace through ageing: " + not.because();
    } else if (kept == null || renewed == null) {
      words =
          "cannot separate clean from replace through ageing: after "
              + (kept == null ? "repairs that keep the seal" : "a new seal")
              + " no test followed";
    } else {
      words =
          "repair with the seal kept leaves "
              + percent(kept)
              + " of the age, a new seal "
              + percent(renewed);
    }
    return words
        + "; failures lie between two tests, wear is taken to go on until the test; weak priors:"
        + " log shape normal (log 1.3, .5), logit of a share normal (0, 1.5); limits by "
        + (limits == Limits.PROFILE
            ? "profile of the likelihood without priors"
            : "curvature, because the sample is large");
  }

  private static String percent(PointEstimate share) {
    return String.format(
        Locale.ROOT,
        "%.0f %% (%.0f to %.0f)",
        100 * share.value(),
        100 * share.interval().lower(),
        100 * share.interval().upper());
  }

  private AgeingRow missing(VirtualAge model, String because) {
    return new AgeingRow(
        stratum,
        model.name(),
        false,
        lives.size(),
        assemblies,
        failures,
        leftOut,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        false,
        "cannot separate clean from replace through ageing; " + because);
  }

  private static PointEstimate value(Estimate<PointEstimate> estimate) {
    return estimate instanceof Estimate.Identified<PointEstimate> i ? i.value() : null;
  }

  private static Double lower(PointEstimate estimate) {
    Interval interval = estimate == null ? null : estimate.interval();
    return interval == null ? null : SealFigures.finite(interval.lower());
  }

  private static Double upper(PointEstimate estimate) {
    Interval interval = estimate == null ? null : estimate.interval();
    return interval == null ? null : SealFigures.finite(interval.upper());
  }
}
