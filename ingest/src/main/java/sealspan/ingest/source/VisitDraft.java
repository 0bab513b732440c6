package sealspan.ingest.source;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sealspan.ingest.validate.HeaderException;
import sealspan.ingest.validate.Notation;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.RowDraft;

/**
 * One visit recorded by hand: a JSON object, or answers to questions. Both have the columns of a
 * table with one row per visit, and go the same way from there.
 *
 * <p>In JSON a block may be an object of its own, so these say the same:
 *
 * <pre>
 * {"assembly_id": "BF-1", "date": "2025-04-17",
 *  "found": {"check1_psid": 0.8, "check2_psid": 1.4, "verdict": "failed"},
 *  "repair": {"check1": {"action": ["cleaned", "disc_replaced"], "mechanism": "debris"}},
 *  "left": {"check1_psid": 1.9, "check2_psid": 1.4, "verdict": "passed"},
 *  "bypass": {"found": {"check1_psid": 1.6}}}
 *
 * {"assembly_id": "BF-1", "date": "2025-04-17", "found_check1_psid": 0.8, ...}
 * </pre>
 */
public final class VisitDraft {
  private VisitDraft() {}

  /**
   * The draft of a JSON object.
   *
   * @param name how messages call it, such as the name of its file
   * @return a draft, or why the text is none
   */
  public static Item ofJson(String name, String json) {
    try {
      return new JsonDrafts(Mapping.NONE).of(new Origin(name, 1, json), json);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException("A text in memory can be read.", e);
    }
  }

  /**
   * The draft of answers.
   *
   * @param answers answers by column; an empty answer is not recorded
   * @throws SourceException where assembly or date are not among the columns
   */
  public static RowDraft ofAnswers(Map<String, String> answers) throws SourceException {
    List<String> names = new ArrayList<>();
    List<String> cells = new ArrayList<>();
    StringBuilder row = new StringBuilder();
    answers.forEach(
        (column, answer) -> {
          if (!column.equals(VisitQuestions.WAS_REPAIRED)) {
            names.add(column);
            cells.add(answer);
            row.append(column).append(": ").append(answer).append('\n');
          }
        });
    try {
      return new RowDraft(
          new Origin("typed in", 1, row.toString()),
          MappedHeader.of(names, Mapping.NONE).plan(),
          cells.toArray(new String[0]),
          Notation.OWN);
    } catch (HeaderException e) {
      throw new SourceException(e.getMessage(), e);
    }
  }
}
