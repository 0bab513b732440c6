package sealspan.ingest.log;

/**
 * What became of one entry that was handed to the log.
 *
 * @param <T> the kind of entries
 */
public sealed interface Receipt<T> {
  /**
   * It was appended and is durable.
   *
   * @param recorded the entry with its place and recorded time
   */
  record Appended<T>(Recorded<T> recorded) implements Receipt<T> {}

  /**
   * An entry of the same id and content is there already; nothing was appended.
   *
   * @param place where that entry stands
   */
  record Duplicate<T>(Place place) implements Receipt<T> {}

  /**
   * An entry of the same id but other content is there already; nothing was appended.
   *
   * @param there the entry that holds
   */
  record Conflict<T>(Recorded<T> there) implements Receipt<T> {}
}
