package sealspan.event;

/** Units that readings come in. 1 psi = 6.894757 kPa (NIST SP 811). */
public enum Unit {
  PSI,
  KPA,
  BAR,
  MM,
  INCH,
  CELSIUS,
  FAHRENHEIT
}
