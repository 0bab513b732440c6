package sealspan.app.cli;

/**
 * Short reminders shown where output leads to work in the field. They remind; they are no
 * procedure.
 */
final class Cautions {
  static final String DEFERENCE =
      "Decision support: the adopted code, the water purveyor, the fire authority, the maker's"
          + " instructions and licensed practice prevail.";

  private static final String[] FIELD_WORK = {
    "Before work: get permission to shut down, and mind users who cannot be without water.",
    "A fire line: tell the owner, the fire authority and the alarm centre before a valve is closed;"
        + " leave valves locked open and alarms normal, and tell them after.",
    "Relieve pressure on both sides before a cover is opened; springs are under compression.",
    "A vault or pit may be a confined space; a pipe may carry earth current; water downstream is"
        + " not potable and may be hot.",
    "Reopen slowly. Fit only parts that are approved for the assembly. Test and repair only with"
        + " the certificate or licence that the place asks for."
  };

  private Cautions() {}

  /** The reminders, one a line, the deference last. */
  static String forFieldWork() {
    return String.join(System.lineSeparator(), FIELD_WORK) + System.lineSeparator() + DEFERENCE;
  }
}
