package sealspan.ingest.log;

import java.time.Instant;

/**
 * An entry as it stands in the log.
 *
 * @param place where it stands
 * @param recordedAt when the log took it in
 * @param entry the content
 */
public record Recorded<T>(Place place, Instant recordedAt, T entry) {}
