package sealspan.study.practice;

import sealspan.event.Means;

/**
 * How seals wear. The hazard of a seal at virtual age a is {@code frailty x size ratio x
 * (shape/scale) (a/scale)^(shape-1)}: Weibull, with a gamma frailty of mean 1 per assembly. A seal
 * that wore out stays failed until somebody acts on it.
 */
public record TrueWear(
    @Means("Weibull shape of check seals") double checkShape,
    @Means("Weibull scale of check seals, years") double checkScaleYears,
    @Means("Weibull shape of relief valve seals") double reliefShape,
    @Means("Weibull scale of relief valve seals, years") double reliefScaleYears,
    @Means("Weibull shape of air inlet seals") double airInletShape,
    @Means("Weibull scale of air inlet seals, years") double airInletScaleYears,
    @Means("hazard of assemblies of 2.5 inches and more, relative to smaller ones")
        double largeSizeRatio,
    @Means("coefficient of variation of the assembly frailty, for wear and fouling alike")
        double frailtyCv) {

  /** A fleet in which about 8 of 100 routine tests fail. */
  public static TrueWear usual() {
    return new TrueWear(1.8, 36, 1.5, 40, 1.5, 30, 1.3, 0.5);
  }

  /** One Weibull for all seals, without frailty or effect of size. */
  public static TrueWear plain(double shape, double scaleYears) {
    return new TrueWear(shape, scaleYears, shape, scaleYears, shape, scaleYears, 1, 0);
  }

  /** The same with another coefficient of variation of the frailty. */
  public TrueWear withFrailtyCv(double cv) {
    return new TrueWear(
        checkShape,
        checkScaleYears,
        reliefShape,
        reliefScaleYears,
        airInletShape,
        airInletScaleYears,
        largeSizeRatio,
        cv);
  }

  double shape(SealKind kind) {
    return switch (kind) {
      case CHECK -> checkShape;
      case RELIEF -> reliefShape;
      case AIR_INLET -> airInletShape;
    };
  }

  double scaleDays(SealKind kind) {
    double years =
        switch (kind) {
          case CHECK -> checkScaleYears;
          case RELIEF -> reliefScaleYears;
          case AIR_INLET -> airInletScaleYears;
        };
    return years * PracticeParameters.DAYS_A_YEAR;
  }
}
