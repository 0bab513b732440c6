package sealspan.ingest.log;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sealspan.table.QuarantinedRow;

/**
 * The rows of some files that stand in quarantine before the files are imported again. A row that
 * the import does not complain of any more was put right; one that was put right and is complained
 * of anew is listed anew. Not for several threads.
 */
public final class StandingRows {
  /** Kind of an entry that says that a row was put right. */
  public static final String PUT_RIGHT = "PUT_RIGHT";

  /** More rows than this are not followed: memory is bounded, and nobody mends them one by one. */
  public static final int MOST_ROWS = 200_000;

  private final String source;
  private int rows;
  private boolean tooMany;

  /** Word that a row was put right, by file and id of the row. */
  private final Map<String, Map<String, QuarantinedRow>> standing = new HashMap<>();

  /** Ids of the rows that were put right. */
  private final Set<String> putRight = new HashSet<>();

  private StandingRows(String source) {
    this.source = source;
  }

  /**
   * What stands of some files of a source.
   *
   * @param files names of the files, without their folders
   */
  public static StandingRows of(Quarantine quarantine, String source, Collection<String> files) {
    StandingRows rows = new StandingRows(source);
    Set<String> wanted = new HashSet<>(files);
    quarantine.read(
        Cut.START,
        quarantine.end(),
        r -> {
          QuarantinedRow row = r.entry();
          if (source.equals(row.source()) && wanted.contains(row.file())) {
            rows.note(row);
          }
        });
    return rows;
  }

  private void note(QuarantinedRow row) {
    Map<String, QuarantinedRow> ofFile =
        standing.computeIfAbsent(row.file(), file -> new TreeMap<>());
    if (row.putsRight() == null) {
      tooMany |= ++rows > MOST_ROWS;
      if (tooMany) {
        standing.clear();
        return;
      }
      // Of the row only the word that it was put right is kept: a file may be full of errors.
      ofFile.put(
          row.id(),
          new QuarantinedRow(
              ContentId.of("put right", row.id()),
              source,
              row.file(),
              row.line(),
              row.field(),
              PUT_RIGHT,
              "The file was imported again to its end without this complaint.",
              null,
              null,
              row.id()));
      return;
    }
    rows -= ofFile.remove(row.putsRight()) == null ? 0 : 1;
    putRight.add(row.putsRight());
  }

  /** Whether there are too many rows to work out which of them were put right. */
  public boolean tooMany() {
    return tooMany;
  }

  /** The row under the id that it stands or will stand under; it counts as complained of. */
  public QuarantinedRow complainedOf(QuarantinedRow row) {
    String id = QuarantineForm.contentId(row);
    while (putRight.contains(id)) {
      id = ContentId.of(id, "again");
    }
    Map<String, QuarantinedRow> ofFile = standing.get(row.file());
    if (ofFile != null) {
      ofFile.remove(id);
    }
    return new QuarantinedRow(
        id,
        row.source(),
        row.file(),
        row.line(),
        row.field(),
        row.kind(),
        row.reason(),
        row.rowText(),
        null,
        null);
  }

  /** After a whole import of a file: word of every row of it that was not complained of again. */
  public List<QuarantinedRow> putRight(String file) {
    return List.copyOf(standing.getOrDefault(file, Map.of()).values());
  }
}
