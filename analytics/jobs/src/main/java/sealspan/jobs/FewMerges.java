package sealspan.jobs;

import java.util.Collection;
import org.apache.flink.state.rocksdb.RocksDBOptionsFactory;
import org.rocksdb.ColumnFamilyOptions;
import org.rocksdb.CompactionStyle;
import org.rocksdb.DBOptions;

/**
 * Lets RocksDB gather more new files before it merges them, and then merge files of like size only.
 * Every checkpoint makes a small one of what has changed since the one before. By the usual levels,
 * and after the usual four, a good part of all state was written anew every few seconds, and each
 * checkpoint had to copy it.
 */
public final class FewMerges implements RocksDBOptionsFactory {
  private static final long serialVersionUID = 1L;

  private static final int FILES = 12;
  private static final int FILES_TO_SLOW_DOWN = 3 * FILES;
  private static final int FILES_TO_STOP = 4 * FILES;

  @Override
  public DBOptions createDBOptions(DBOptions current, Collection<AutoCloseable> toClose) {
    return current;
  }

  @Override
  public ColumnFamilyOptions createColumnOptions(
      ColumnFamilyOptions current, Collection<AutoCloseable> toClose) {
    return current
        .setCompactionStyle(CompactionStyle.UNIVERSAL)
        .setLevel0FileNumCompactionTrigger(FILES)
        .setLevel0SlowdownWritesTrigger(FILES_TO_SLOW_DOWN)
        .setLevel0StopWritesTrigger(FILES_TO_STOP);
  }
}
