package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.api.java.functions.KeySelector;
import org.apache.flink.api.java.typeutils.ResultTypeQueryable;
import sealspan.table.WatchRows;

/** One key for all: the watch follows one order. */
final class WatchKey implements KeySelector<Watched, String>, ResultTypeQueryable<String> {
  private static final long serialVersionUID = 1L;

  @Override
  public String getKey(Watched any) {
    return WatchRows.KEY;
  }

  @Override
  public TypeInformation<String> getProducedType() {
    return Types.STRING;
  }
}
