package sealspan.answers;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import sealspan.study.BatchTables;
import sealspan.table.AssemblyRows;
import sealspan.table.ZoneRows;

/**
 * The histories of all assemblies and zones up to a cut of the log, worked out anew by the study
 * functions, for a study that no published table answers.
 *
 * @param asOf the cut in words
 * @param assemblies the rows of all assemblies, without fits, by id
 * @param zones the rows of all water zones
 */
public record FoldedRecord(String asOf, List<AssemblyRows> assemblies, List<ZoneRows> zones) {
  private static final int OPENING_TRIES = 5;

  /**
   * Reads the events and folds them. It takes a while and holds them in memory.
   *
   * @param dataFolder the data folder; the engine need not run
   * @param asOf the day; null for all that the newest snapshot knows
   * @param progress told of the steps
   * @throws AnswersException where there is no snapshot, or it cannot be read
   */
  public static FoldedRecord read(Path dataFolder, AsOf asOf, Progress progress) {
    AnswersFolder folder = new AnswersFolder(dataFolder);
    for (int tries = 1; ; tries++) {
      Path snapshot = folder.newestSnapshot();
      try {
        return read(folder, asOf, progress);
      } catch (SQLException e) {
        // A newer snapshot may have taken its place since its name was read.
        if (tries == OPENING_TRIES || Files.exists(snapshot)) {
          throw new AnswersException(
              "The events of " + dataFolder + " cannot be read: " + e.getMessage(), e);
        }
      }
    }
  }

  private static FoldedRecord read(AnswersFolder folder, AsOf asOf, Progress progress)
      throws SQLException {
    Instant end = asOf == null ? RecordUntil.EVER : asOf.end();
    try (RecordUntil record = RecordUntil.of(folder, end, progress)) {
      record.publication().addTo(record.model());
      progress.at("working out histories", 0, record.events().events().size());
      return new FoldedRecord(
          (asOf == null ? "" : asOf.words() + ": ") + Cut.of(record.model()).words(),
          BatchTables.assemblies(record.events().logged(), record.criteria()),
          BatchTables.zones(record.events().logged()));
    }
  }
}
