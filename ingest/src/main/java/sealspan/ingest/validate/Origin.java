package sealspan.ingest.validate;

/**
 * Where a row stands.
 *
 * @param file name of the file, as a person would give it
 * @param line line on which the row begins, from 1
 * @param row the row as it stands in the file
 */
public record Origin(String file, long line, String row) {}
