package sealspan.table;

import java.time.Instant;
import sealspan.event.Means;

/** A fit: what it was made from. */
public record FitRow(
    @Means("stratum") String stratum,
    @Means("id of the cut") String cutId,
    @Means("offset after the last event of each partition that is in, such as 0:12,1:7")
        String cutOffsets,
    @Means("recorded time of the newest event that is in") Instant newestRecordedAt,
    @Means("assemblies of the stratum") int assemblies,
    @Means("SHA-256 of the input, hex, first 16 digits") String inputDigest,
    @Means("version of the code that made it") String codeVersion) {}
