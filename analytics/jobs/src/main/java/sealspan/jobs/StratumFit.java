package sealspan.jobs;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.streaming.api.functions.KeyedProcessFunction;
import org.apache.flink.streaming.api.operators.StreamingRuntimeContext;
import org.apache.flink.util.Collector;
import sealspan.avro.TableCodec;
import sealspan.event.Subject;
import sealspan.study.FitCut;
import sealspan.study.Fits;
import sealspan.study.Members;
import sealspan.study.fouling.FoulingTables;
import sealspan.table.Bundle;
import sealspan.table.FoulingRows;
import sealspan.table.ZoneRows;

/**
 * At the end of the input, the fit of each stratum from the rows of its members, and what all of
 * them with the zones tell of fouling. Members wait in a file for each stratum and not in Flink's
 * state, which the bounded job would keep in memory; it never resumes.
 */
final class StratumFit extends KeyedProcessFunction<String, Member, Upsert> {
  private static final long serialVersionUID = 1L;

  private final String cutId;
  private final String cutOffsets;
  private final Instant newestRecordedAt;
  private final long cutRevision;
  private transient Path folder;
  private transient Map<String, MemberFile> assemblies;
  private transient List<ZoneRows> zones;

  StratumFit(FitCut cut) {
    this.cutId = cut.id();
    this.cutOffsets = cut.offsets();
    this.newestRecordedAt = cut.newestRecordedAt();
    this.cutRevision = cut.revision();
  }

  @Override
  public void open(OpenContext context) {
    StreamingRuntimeContext runtime = (StreamingRuntimeContext) getRuntimeContext();
    folder = Path.of(runtime.getTaskManagerRuntimeInfo().getTmpDirectories()[0]);
    assemblies = new HashMap<>();
    zones = new ArrayList<>();
  }

  @Override
  public void processElement(Member member, Context context, Collector<Upsert> out) {
    if (Subject.kindOfKey(member.key) == Subject.Kind.ZONE) {
      zones.add(TableCodec.decode(member.rows, ZoneRows.class)); // go to the study of fouling alone
    } else {
      assemblies
          .computeIfAbsent(member.stratum, stratum -> MemberFile.in(folder))
          .add(member.key, member.rows);
    }
    context.timerService().registerEventTimeTimer(Long.MAX_VALUE);
  }

  @Override
  public void onTimer(long end, OnTimerContext context, Collector<Upsert> out) {
    String stratum = context.getCurrentKey();
    try (MemberFile file = assemblies.remove(stratum)) {
      out.collect(new Upsert(fit(stratum, file == null ? Members.of(List.of()) : file)));
    }
  }

  private Bundle fit(String stratum, Members members) {
    FitCut cut = new FitCut(cutId, cutOffsets, newestRecordedAt, cutRevision);
    return stratum.equals(FoulingRows.KEY)
        ? FoulingTables.of(members, zones, cut)
        : Fits.of(stratum, members, cut);
  }

  /** Also called when the job fails or is cancelled. */
  @Override
  public void close() {
    if (assemblies != null) {
      assemblies.values().forEach(MemberFile::close);
      assemblies.clear();
    }
  }
}
