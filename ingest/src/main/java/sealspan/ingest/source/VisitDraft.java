package sealspan.ingest.source;

import java.io.IOException;
import java.io.UncheckedIOException;
import sealspan.ingest.validate.Origin;

/**
 * One visit, or one event, typed in or kept as a JSON object. Its members are the columns of a
 * table, and it goes the same way from there.
 *
 * <p>A block may be an object of its own, so these say the same:
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
      throw new UncheckedIOException("A text in memory can be read.", e);
    }
  }
}
