package sealspan.jobs;

/** Where the continuous job keeps its state between checkpoints. */
public enum StateKept {
  /** On the heap: fastest, every checkpoint writes all of it; for small programmes. */
  HEAP("hashmap"),
  /** In RocksDB files: for any size, a checkpoint writes what has changed. */
  ROCKSDB("rocksdb");

  private final String backend;

  StateKept(String backend) {
    this.backend = backend;
  }

  /** Flink's name for it. */
  String backend() {
    return backend;
  }
}
