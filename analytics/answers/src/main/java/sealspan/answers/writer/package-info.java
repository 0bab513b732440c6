/**
 * The one writer of the read model: from the topics of rows and events into a private DuckDB file,
 * and from there to published read-only snapshots.
 */
package sealspan.answers.writer;
