package sealspan.study.fouling;

/** Shapes of zones in which clusters are looked for. */
public enum ZoneShape {
  /** Circles by nearest neighbours. */
  CIRCLES("circle"),
  /** Circles and ellipses; long ones have to score more. */
  ELLIPSES("circle or ellipse"),
  /** Any choice of sites among the nearest to a centre. */
  SUBSETS("choice of sites"),
  /** Sites by their distance along the pipes. */
  PIPES("reach of pipes");

  private final String one;

  ZoneShape(String one) {
    this.one = one;
  }

  /** One such zone, in words. */
  String one() {
    return one;
  }

  /** Whether a distance from the centre tells who belongs to a zone. */
  public boolean isRegular() {
    return this == CIRCLES || this == ELLIPSES;
  }
}
