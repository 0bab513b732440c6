package sealspan.study;

import java.time.Instant;

/**
 * The cut of the log that a fit is made at.
 *
 * @param id content-derived id
 * @param offsets offset after the last event of each partition that is in, such as {@code 0:12,1:7}
 * @param newestRecordedAt recorded time of the newest event that is in
 * @param revision grows with every cut
 */
public record FitCut(String id, String offsets, Instant newestRecordedAt, long revision) {}
