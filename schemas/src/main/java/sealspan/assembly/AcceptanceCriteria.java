package sealspan.assembly;

/** The dated table of limits in force. */
public record AcceptanceCriteria(String csv) {
  /** The table that ships with the program. */
  public static AcceptanceCriteria shipped() {
    return new AcceptanceCriteria("");
  }
}
