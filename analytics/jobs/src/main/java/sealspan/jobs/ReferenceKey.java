package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.api.java.functions.KeySelector;
import org.apache.flink.api.java.typeutils.ResultTypeQueryable;

/** The subject that a registration is about. */
final class ReferenceKey implements KeySelector<Registration, String>, ResultTypeQueryable<String> {
  private static final long serialVersionUID = 1L;

  @Override
  public String getKey(Registration registration) {
    return registration.reference;
  }

  @Override
  public TypeInformation<String> getProducedType() {
    return Types.STRING;
  }
}
