package sealspan.answers.writer;

import sealspan.event.LoggedEvent;

/**
 * An event with its place in the log and its bytes.
 *
 * @param partition partition of the log
 * @param offset offset in the partition
 * @param event the event with its envelope, as a glance sees it
 * @param value its bytes as the log has them
 */
record EventRow(int partition, long offset, LoggedEvent event, byte[] value) {}
