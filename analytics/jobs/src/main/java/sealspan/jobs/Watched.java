package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;

/** What goes to the watch over fouling: the tests of an assembly, or an entry of the ledger. */
public final class Watched {
  static final TypeInformation<Watched> TYPE = Types.POJO(Watched.class);

  /** What travels. */
  public enum What {
    TESTS,
    MODEL
  }

  /** The assembly, or the entry's id. */
  public String id;

  /** The tests, packed by {@link WatchedBytes}; the entry, by the codec of tables. */
  public byte[] content;

  /** What it is. */
  public What what = What.TESTS;

  /** For Flink. */
  public Watched() {}

  Watched(String id, byte[] content, What what) {
    this.id = id;
    this.content = content;
    this.what = what;
  }
}
