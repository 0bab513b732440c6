package sealspan.event;

import java.math.BigDecimal;

/**
 * A number as somebody wrote it, with its unit.
 *
 * @param entered decimal text as entered (decimal point), such as {@code 1.20}
 * @param unit its unit
 */
public record Quantity(
    @Means("decimal text as entered, with a decimal point") String entered,
    @Means("unit of the number") Unit unit) {

  public Quantity {
    new BigDecimal(entered);
    if (unit == null) {
      throw new IllegalArgumentException("A quantity needs a unit.");
    }
  }

  /** The exact value in {@link #unit()}. */
  public BigDecimal value() {
    return new BigDecimal(entered);
  }
}
