/**
 * The append-only log, the only truth of the system: events, rejected rows, and what cannot be
 * derived again. Kept by Apache Kafka, either a broker that {@link sealspan.ingest.log.LocalBroker}
 * starts as a child process, or a cluster of the user's.
 */
package sealspan.ingest.log;
