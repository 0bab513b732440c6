package sealspan.jobs;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.api.common.state.MapState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.streaming.api.functions.KeyedProcessFunction;
import org.apache.flink.util.Collector;
import sealspan.avro.TableCodec;
import sealspan.study.FitCut;
import sealspan.study.Fits;
import sealspan.study.fouling.FoulingTables;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FoulingRows;
import sealspan.table.ZoneRows;

/**
 * At the end of the input, the fit of each stratum from the rows of its members, and what all of
 * them with the zones tell of fouling.
 */
final class StratumFit extends KeyedProcessFunction<String, Member, Upsert> {
  private static final long serialVersionUID = 1L;

  private final String cutId;
  private final String cutOffsets;
  private final Instant newestRecordedAt;
  private final long cutRevision;
  private transient MapState<String, byte[]> members;

  StratumFit(FitCut cut) {
    this.cutId = cut.id();
    this.cutOffsets = cut.offsets();
    this.newestRecordedAt = cut.newestRecordedAt();
    this.cutRevision = cut.revision();
  }

  @Override
  public void open(OpenContext context) {
    members =
        getRuntimeContext()
            .getMapState(
                new MapStateDescriptor<>(
                    "members",
                    Types.STRING,
                    PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO));
  }

  @Override
  public void processElement(Member member, Context context, Collector<Upsert> out)
      throws Exception {
    members.put(member.key, member.rows);
    context.timerService().registerEventTimeTimer(Long.MAX_VALUE);
  }

  @Override
  public void onTimer(long end, OnTimerContext context, Collector<Upsert> out) throws Exception {
    List<AssemblyRows> assemblies = new ArrayList<>();
    List<ZoneRows> zones = new ArrayList<>();
    // What is unpacked is let go at once: a large stratum is not in memory twice.
    for (Iterator<Map.Entry<String, byte[]>> all = members.iterator(); all.hasNext(); ) {
      Bundle rows = TableCodec.decode(all.next().getValue(), Bundle.class);
      all.remove();
      if (rows instanceof ZoneRows zone) {
        zones.add(zone);
      } else {
        assemblies.add((AssemblyRows) rows);
      }
    }
    FitCut cut = new FitCut(cutId, cutOffsets, newestRecordedAt, cutRevision);
    out.collect(
        new Upsert(
            context.getCurrentKey().equals(FoulingRows.KEY)
                ? FoulingTables.of(assemblies, zones, cut)
                : Fits.of(context.getCurrentKey(), assemblies, cut)));
  }
}
