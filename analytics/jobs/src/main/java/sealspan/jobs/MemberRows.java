package sealspan.jobs;

import java.util.HashMap;
import java.util.Map;
import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.streaming.api.functions.KeyedProcessFunction;
import org.apache.flink.util.Collector;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.avro.TableCodec;
import sealspan.event.Subject;
import sealspan.study.Fits;
import sealspan.study.NeededRows;
import sealspan.study.ZoneTables;
import sealspan.study.fouling.FoulingTables;
import sealspan.table.AssemblyRows;
import sealspan.table.FoulingRows;

/**
 * At the end of the input, of the rows of each assembly those that are read, once for every stratum
 * that it is of, and once with those of the zones for the study of fouling.
 */
final class MemberRows extends KeyedProcessFunction<String, Addressed, Member> {
  private static final long serialVersionUID = 1L;

  private final AcceptanceCriteria criteria;
  private transient EventBag bag;

  MemberRows(AcceptanceCriteria criteria) {
    this.criteria = criteria;
  }

  @Override
  public void open(OpenContext context) {
    bag = new EventBag(getRuntimeContext().getListState(EventBag.STATE));
  }

  @Override
  public void processElement(Addressed event, Context context, Collector<Member> out)
      throws Exception {
    bag.add(event);
    context.timerService().registerEventTimeTimer(Long.MAX_VALUE);
  }

  @Override
  public void onTimer(long end, OnTimerContext context, Collector<Member> out) throws Exception {
    Subject subject = Subject.ofKey(context.getCurrentKey());
    if (subject.kind() == Subject.Kind.ZONE) {
      out.collect(new Member(FoulingRows.KEY, ZoneTables.of(subject.id(), bag.events(), 0)));
      return;
    }
    AssemblyRows rows = RowsOf.forFit(context.getCurrentKey(), bag.events(), criteria);
    out.collect(new Member(FoulingRows.KEY, FoulingTables.needed(rows)));
    Map<NeededRows, byte[]> packed = new HashMap<>();
    for (String stratum : Fits.strataOf(rows)) {
      byte[] needed =
          packed.computeIfAbsent(
              NeededRows.of(stratum), which -> TableCodec.encode(which.of(rows)));
      out.collect(new Member(stratum, rows.key(), needed));
    }
  }
}
