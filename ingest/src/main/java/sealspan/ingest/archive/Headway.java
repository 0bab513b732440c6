package sealspan.ingest.archive;

/** Hears how far an export or a restore is. */
@FunctionalInterface
public interface Headway {
  /**
   * Called now and then.
   *
   * @param file the file at work
   * @param records records done
   * @param all records in all
   */
  void at(String file, long records, long all);
}
