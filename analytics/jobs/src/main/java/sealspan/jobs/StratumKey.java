package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.api.java.functions.KeySelector;
import org.apache.flink.api.java.typeutils.ResultTypeQueryable;

/** The stratum that a member belongs to. */
final class StratumKey implements KeySelector<Member, String>, ResultTypeQueryable<String> {
  private static final long serialVersionUID = 1L;

  @Override
  public String getKey(Member member) {
    return member.stratum;
  }

  @Override
  public TypeInformation<String> getProducedType() {
    return Types.STRING;
  }
}
