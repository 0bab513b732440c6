package sealspan.app.engine;

/**
 * Where the program writes its own log, for those who look after it. Both settings are read by
 * log4j2.properties, so they are in place before the first logger.
 */
public final class ProgramLog {
  /** System property: folder of the log files. */
  public static final String FOLDER = "sealspan.logs";

  /** System property: name of the log file, without its ending. */
  public static final String NAME = "sealspan.log.name";

  private ProgramLog() {}

  /** Sends the log of this process to a folder, unless it goes elsewhere already. */
  public static void into(DataFolder folder) {
    if (System.getProperty(FOLDER) == null) {
      System.setProperty(FOLDER, folder.logs().toString());
      System.setProperty(NAME, "commands");
    }
  }
}
