package sealspan.study.practice;

import sealspan.event.Means;

/**
 * What repairs do and how they are chosen. After an action a seal of virtual age w goes on at age q
 * w (Kijima's second model, with wear counted up to the day of the test). The choice is by
 * indication: the probability of replacing is the inverse logit of {@code replaceLogit +
 * replaceLogitPerLogAge ln(w/scale) + replaceLogitIfWorn [worn]}.
 */
public record TrueRepairs(
    @Means("q of cleaning: share of the virtual age that is left") double qClean,
    @Means("q of replacing the seal") double qReplace,
    @Means("probability that cleaning does not take: the retest of the same visit fails")
        double cleanDoesNotTake,
    @Means("probability that replacing does not take") double replaceDoesNotTake,
    @Means("logit of replacing at a virtual age of one scale, when fouled") double replaceLogit,
    @Means("change of that logit with the log of the virtual age") double replaceLogitPerLogAge,
    @Means("change of that logit when the seal is worn") double replaceLogitIfWorn,
    @Means("probability that a seal is damaged in cleaning, and so replaced") double damagedInWork,
    @Means("probability that the other seals of the line are replaced while it is open")
        double kitWhileOpen,
    @Means("share of positions with a rebuild every five years") double scheduledShare,
    @Means("probability that an assembly over 20 years old is replaced when it fails")
        double assemblyReplaced,
    @Means("probability that a failed assembly is left failed until a second visit")
        double leftFailed,
    @Means("probability that a fouled assembly is flushed and reported as passed")
        double flushedToPass) {

  /** Cleaning that keeps most of the age, chosen for the young and fouled. */
  public static TrueRepairs usual() {
    return new TrueRepairs(
        0.6, 0.05, 0.12, 0.03, -0.2, 1.2, 1.0, 0.01, 0.25, 0.08, 0.15, 0.06, 0.06);
  }

  /** Cleaning or replacing by the toss of a coin, always at once, and always holding. */
  public static TrueRepairs plain(double qClean, double qReplace) {
    return new TrueRepairs(qClean, qReplace, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  }

  /** The same with other probabilities that an action does not take. */
  public TrueRepairs withDoesNotTake(double clean, double replace) {
    return new TrueRepairs(
        qClean,
        qReplace,
        clean,
        replace,
        replaceLogit,
        replaceLogitPerLogAge,
        replaceLogitIfWorn,
        damagedInWork,
        kitWhileOpen,
        scheduledShare,
        assemblyReplaced,
        leftFailed,
        flushedToPass);
  }

  /** The same with another choice between cleaning and replacing. */
  public TrueRepairs withIndication(double logit, double perLogAge, double ifWorn) {
    return new TrueRepairs(
        qClean,
        qReplace,
        cleanDoesNotTake,
        replaceDoesNotTake,
        logit,
        perLogAge,
        ifWorn,
        damagedInWork,
        kitWhileOpen,
        scheduledShare,
        assemblyReplaced,
        leftFailed,
        flushedToPass);
  }

  /** Probability that a failed seal is replaced rather than cleaned. */
  public double replaceProbability(double virtualAgeDays, double scaleDays, SealState state) {
    double age = Math.max(virtualAgeDays, 1) / scaleDays;
    double logit = replaceLogit + replaceLogitPerLogAge * StrictMath.log(age);
    if (state == SealState.WORN) {
      logit += replaceLogitIfWorn;
    }
    return 1 / (1 + StrictMath.exp(-logit));
  }
}
