package sealspan.jobs;

import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.api.common.state.MapState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.streaming.api.functions.KeyedProcessFunction;
import org.apache.flink.util.Collector;

/**
 * Sends the events of sites, gauges and testers on to the assemblies that refer to them, each once
 * to each, whichever comes first. Keyed by the site, gauge or tester.
 */
final class ReferenceDirectory extends KeyedProcessFunction<String, Addressed, Addressed> {
  private static final long serialVersionUID = 1L;

  private transient EventBag bag;
  private transient MapState<String, Boolean> assemblies;

  @Override
  public void open(OpenContext context) {
    bag = new EventBag(getRuntimeContext().getListState(EventBag.STATE));
    assemblies =
        getRuntimeContext()
            .getMapState(new MapStateDescriptor<>("assemblies", Types.STRING, Types.BOOLEAN));
  }

  @Override
  public void processElement(Addressed arrived, Context context, Collector<Addressed> out)
      throws Exception {
    if (arrived.isReference()) {
      refer(arrived.assembly(), out);
      return;
    }
    bag.add(arrived);
    for (String assembly : assemblies.keys()) {
      out.collect(Addressed.event(assembly, arrived.packed));
    }
  }

  private void refer(String assembly, Collector<Addressed> out) throws Exception {
    if (assemblies.contains(assembly)) {
      return;
    }
    assemblies.put(assembly, true);
    for (byte[] event : bag.packed()) {
      out.collect(Addressed.event(assembly, event));
    }
  }
}
