package sealspan.ingest.source;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.ingest.validate.Problem;
import sealspan.ingest.validate.Problem.Fault;

/**
 * What became of the rows of a file.
 *
 * @param file name of the file
 * @param rowsRead rows read, without header and empty lines
 * @param emptyLines empty lines passed
 * @param accepted events that the rows told of
 * @param appended events that are in the log now and were not before
 * @param duplicates events that were in the log already
 * @param conflicts events of which the log holds another version; set aside
 * @param rejectedRows rows that were set aside
 * @param rejectedByFault rows that have a fault of each sort; a row counts once under each
 * @param leftOut rows left out by their nature, by reason
 * @param stopped whether the import was interrupted before the end of the file
 * @param notes how the file was understood
 */
public record ImportSummary(
    String file,
    long rowsRead,
    long emptyLines,
    long accepted,
    long appended,
    long duplicates,
    long conflicts,
    long rejectedRows,
    Map<Fault, Long> rejectedByFault,
    Map<String, Long> leftOut,
    boolean stopped,
    List<String> notes) {

  /** Whether every row went in, was there already, or was left out by its nature. */
  public boolean isClean() {
    return conflicts == 0 && rejectedRows == 0 && !stopped;
  }

  /** Counts while an import runs; the appending thread counts outcomes, the reading thread rows. */
  static final class Counts {
    private long rows;
    private long accepted;
    private long rejectedRows;
    private final Map<Fault, Long> rejectedByFault = new EnumMap<>(Fault.class);
    private final Map<String, Long> leftOut = new TreeMap<>();
    private long appended;
    private long duplicates;
    private long conflicts;

    void row() {
      rows++;
    }

    long rows() {
      return rows;
    }

    void accepted(int events) {
      accepted += events;
    }

    void leftOut(String reason) {
      leftOut.merge(reason, 1L, Long::sum);
    }

    void rejected(List<Problem> problems) {
      rejectedRows++;
      problems.stream()
          .map(Problem::fault)
          .distinct()
          .forEach(fault -> rejectedByFault.merge(fault, 1L, Long::sum));
    }

    /** Called by one thread at a time, each after the other. */
    void outcome(Appending.Outcome outcome) {
      if (outcome instanceof Appending.Outcome.Appended) {
        appended++;
      } else if (outcome instanceof Appending.Outcome.Duplicate) {
        duplicates++;
      } else if (outcome instanceof Appending.Outcome.Conflict) {
        conflicts++;
      }
    }

    ImportSummary summary(DraftSource file, boolean stopped) {
      return new ImportSummary(
          file.name(),
          rows,
          file.emptyLines(),
          accepted,
          appended,
          duplicates,
          conflicts,
          rejectedRows,
          Map.copyOf(rejectedByFault),
          Map.copyOf(leftOut),
          stopped,
          file.notes());
    }
  }
}
