package sealspan.jobs;

import java.util.Collection;
import org.apache.flink.state.rocksdb.RocksDBOptionsFactory;
import org.rocksdb.ColumnFamilyOptions;
import org.rocksdb.DBOptions;

/**
 * Lets RocksDB gather more new files before it merges them with the old ones. Every checkpoint
 * makes a small one of what has changed since the one before; merged by the usual four, a good part
 * of all state was written anew every few seconds, a fifth of the work of live events.
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
        .setLevel0FileNumCompactionTrigger(FILES)
        .setLevel0SlowdownWritesTrigger(FILES_TO_SLOW_DOWN)
        .setLevel0StopWritesTrigger(FILES_TO_STOP);
  }
}
