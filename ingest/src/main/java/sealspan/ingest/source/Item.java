package sealspan.ingest.source;

import sealspan.ingest.validate.EventDraft;
import sealspan.ingest.validate.Origin;
import sealspan.ingest.validate.Problem;

/** What a row of a file comes out as. */
public sealed interface Item {
  /** A draft to be judged. */
  record Draft(EventDraft draft) implements Item {}

  /** A row that cannot even be read. */
  record Broken(Origin origin, Problem problem) implements Item {}

  /**
   * A row that is no event of ours by its nature, such as a quality-control sample.
   *
   * @param reason why, in a few words, for counting
   */
  record LeftOut(Origin origin, String reason) implements Item {}
}
