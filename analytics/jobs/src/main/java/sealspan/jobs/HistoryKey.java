package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.api.java.functions.KeySelector;
import org.apache.flink.api.java.typeutils.ResultTypeQueryable;

/** The subject whose history an event goes to. */
final class HistoryKey implements KeySelector<Addressed, String>, ResultTypeQueryable<String> {
  private static final long serialVersionUID = 1L;

  @Override
  public String getKey(Addressed event) {
    return event.to;
  }

  @Override
  public TypeInformation<String> getProducedType() {
    return Types.STRING;
  }
}
