package sealspan.table;

/** Rows that replace, all at once, whatever was known under the same key before. */
public sealed interface Bundle permits AssemblyRows, ZoneRows, FitRows, FoulingRows, WatchRows {
  /** Key of the bundle: unique over all kinds of bundles. */
  String key();

  /** A bundle with a smaller revision than one already seen under its key is to be ignored. */
  long revision();
}
