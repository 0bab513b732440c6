package sealspan.ingest.validate;

import java.time.Instant;
import sealspan.event.AssemblyEvent;

/**
 * An event that a row tells of, without its envelope.
 *
 * @param event the event
 * @param givenId id in its source; null where the source gives none
 * @param reportedAt when it was reported; null where the source does not tell
 */
record Told(AssemblyEvent event, String givenId, Instant reportedAt) {}
