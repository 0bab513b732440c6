package sealspan.ingest.log;

/**
 * Where an entry stands in its topic.
 *
 * @param partition from 0
 * @param offset from 0, growing with every entry of the partition, with possible gaps
 */
public record Place(int partition, long offset) {}
