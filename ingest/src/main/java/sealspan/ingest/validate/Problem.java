package sealspan.ingest.validate;

/**
 * One thing that is wrong with a row.
 *
 * @param field the field at fault, as the file names it; null for the row as a whole
 * @param fault what sort of thing is wrong
 * @param wrong what is wrong, in words
 * @param remedy what to do about it
 */
public record Problem(String field, Fault fault, String wrong, String remedy) {

  /** Sorts of faults, for counting. */
  public enum Fault {
    MISSING("a required field is empty"),
    NOT_A_NUMBER("not a number"),
    OUT_OF_RANGE("a number out of range"),
    UNIT("a unit that does not fit"),
    NOT_A_DAY("not a day"),
    DAY_OUT_OF_RANGE("a day in the future or before 1900"),
    NOT_A_TIME("not a time of day"),
    UNKNOWN_CODE("an unknown code or word"),
    CONTRADICTION("fields of the row contradict each other"),
    NO_SUCH_PART("a part that no type of assembly has"),
    NOTHING_TOLD("the row tells of no event"),
    CELL_COUNT("too many or too few cells"),
    QUOTES("a quotation mark that is not closed"),
    ENCODING("bytes that are not text in the encoding"),
    TOO_LONG("a line or row that is too long"),
    NOT_JSON("not a JSON object"),
    UNKNOWN_FIELD("a field that does not exist"),
    NO_ZONE("no water zone");

    private final String words;

    Fault(String words) {
      this.words = words;
    }

    /** The fault in words. */
    public String words() {
      return words;
    }
  }

  /** The whole problem as one sentence or two, without the place. */
  public String text() {
    return wrong + " " + remedy;
  }
}
