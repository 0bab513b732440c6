package sealspan.jobs;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.flink.api.common.accumulators.LongCounter;
import org.apache.flink.api.common.state.BroadcastState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.state.ValueState;
import org.apache.flink.api.common.state.ValueStateDescriptor;
import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.runtime.state.StateInitializationContext;
import org.apache.flink.runtime.state.VoidNamespace;
import org.apache.flink.streaming.api.operators.AbstractStreamOperator;
import org.apache.flink.streaming.api.operators.TwoInputStreamOperator;
import org.apache.flink.streaming.runtime.streamrecord.StreamRecord;
import org.apache.flink.util.OutputTag;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.avro.TableCodec;
import sealspan.event.LoggedEvent;
import sealspan.study.IssuedForecast;
import sealspan.table.FitRows;

/**
 * Keeps the history of each assembly and zone, and sends its rows on when it has changed: a little
 * later, so that a burst of events of one history gives one bundle, but always before a checkpoint.
 * So whatever a completed checkpoint has read is in the rows. The second input are the fits, the
 * same for all keys; after a new one every assembly is sent on again, little by little. Beside its
 * events a history gets the forecasts that were issued for it, to be held against what came of
 * them.
 *
 * <p>An operator rather than a process function, because only an operator is told that a checkpoint
 * is about to begin.
 */
final class HistoryFold extends AbstractStreamOperator<Upsert>
    implements TwoInputStreamOperator<Addressed, byte[], Upsert> {
  private static final long serialVersionUID = 1L;

  /** The tests of assemblies that have changed, on their way to the watch over fouling. */
  static final OutputTag<Watched> WATCHED = new OutputTag<>("watched", Watched.TYPE);

  private static final String ZONE = "zone/";
  private static final MapStateDescriptor<String, byte[]> FITS =
      new MapStateDescriptor<>(
          "fits", Types.STRING, PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO);
  private static final ValueStateDescriptor<Long> SCORED =
      new ValueStateDescriptor<>("scored", Types.LONG);

  private final AcceptanceCriteria criteria;

  private transient EventBag bag;

  /** The forecasts that were issued for the key. */
  private transient DistinctBytes issued;

  /** The mark of the fit that the rows of the key were last sent on with. */
  private transient ValueState<Long> scored;

  private transient BroadcastState<String, byte[]> fits;
  private transient LastFit lastFit;
  private transient Set<String> changed;
  private transient ArrayDeque<String> toScore;
  private transient SendPace pace;
  private transient boolean scoreAll;
  private transient boolean armed;
  private final LongCounter historiesChanged = new LongCounter();
  private final LongCounter historiesSent = new LongCounter();

  HistoryFold(AcceptanceCriteria criteria) {
    this.criteria = criteria;
  }

  @Override
  public void initializeState(StateInitializationContext context) throws Exception {
    super.initializeState(context);
    bag = new EventBag(context.getKeyedStateStore().getListState(EventBag.STATE));
    issued =
        new DistinctBytes(context.getKeyedStateStore().getListState(DistinctBytes.named("issued")));
    scored = context.getKeyedStateStore().getState(SCORED);
    fits = context.getOperatorStateStore().getBroadcastState(FITS);
    List<FitRows> known = new ArrayList<>();
    for (Map.Entry<String, byte[]> fit : fits.immutableEntries()) {
      known.add(TableCodec.decode(fit.getValue(), FitRows.class));
    }
    lastFit = new LastFit(known);
    scoreAll = context.isRestored() && !known.isEmpty();
  }

  @Override
  public void open() throws Exception {
    super.open();
    changed = new LinkedHashSet<>();
    toScore = new ArrayDeque<>();
    pace = new SendPace();
    getRuntimeContext().addAccumulator(JobProgress.CHANGED, historiesChanged);
    getRuntimeContext().addAccumulator(JobProgress.SENT, historiesSent);
    if (scoreAll) {
      arm();
    }
  }

  @Override
  public void processElement1(StreamRecord<Addressed> record) throws Exception {
    Addressed arrived = record.getValue();
    pace.arrived();
    if (arrived.isForecast()) {
      issued.add(arrived.packed);
      if (bag.isEmpty()) {
        return; // There is no history yet that it can be shown with.
      }
    } else {
      bag.add(arrived);
    }
    if (changed.add(arrived.to)) {
      historiesChanged.add(1);
    }
    arm();
  }

  @Override
  public void processElement2(StreamRecord<byte[]> record) throws Exception {
    FitRows fit = TableCodec.decode(record.getValue(), FitRows.class);
    if (lastFit.add(fit)) {
      fits.put(fit.stratum(), record.getValue());
      scoreAll = true;
      arm();
    }
  }

  @Override
  public void prepareSnapshotPreBarrier(long checkpointId) throws Exception {
    sendChanged();
  }

  @Override
  public void finish() throws Exception {
    sendChanged();
    while (scoreSome(Long.MAX_VALUE)) {}
    super.finish();
  }

  private void arm() {
    if (!armed) {
      armed = true;
      long now = getProcessingTimeService().getCurrentProcessingTime();
      getProcessingTimeService().registerTimer(pace.dueMillis(now), this::onTimer);
    }
  }

  private void onTimer(long due) throws Exception {
    armed = false;
    if (pace.holds(getProcessingTimeService().getCurrentProcessingTime())) {
      arm();
      return;
    }
    long begin = System.nanoTime();
    sendChanged();
    boolean more = scoreSome(begin + SendPace.SLICE_NANOS);
    pace.took(System.nanoTime() - begin);
    if (more) {
      arm();
    }
  }

  private void sendChanged() throws Exception {
    for (String key : StateOrder.of(changed, keyGroups())) {
      List<LoggedEvent> events = send(key);
      historiesSent.add(1);
      if (!key.startsWith(ZONE)) {
        output.collect(WATCHED, new StreamRecord<>(RowsOf.watched(key, events, criteria)));
      }
    }
    changed.clear();
  }

  private int keyGroups() {
    return getRuntimeContext().getTaskInfo().getMaxNumberOfParallelSubtasks();
  }

  /** Sends on histories that were scored with another fit, until a time; tells if more are left. */
  private boolean scoreSome(long untilNanos) throws Exception {
    if (scoreAll) {
      scoreAll = false;
      historiesSent.add(toScore.size()); // They are sent with a later fit.
      toScore.clear();
      try (Stream<String> keys =
          this.<String>getKeyedStateBackend().getKeys(SCORED.getName(), VoidNamespace.INSTANCE)) {
        keys.filter(key -> !key.startsWith(ZONE)).forEach(toScore::add);
      }
      historiesChanged.add(toScore.size());
    }
    long mark = lastFit.mark();
    while (!toScore.isEmpty() && System.nanoTime() < untilNanos) {
      String key = toScore.remove();
      historiesSent.add(1);
      setCurrentKey(key);
      if (scored.value() != mark) {
        send(key);
      }
    }
    return !toScore.isEmpty();
  }

  private List<LoggedEvent> send(String key) throws Exception {
    setCurrentKey(key);
    List<LoggedEvent> events = bag.events();
    scored.update(lastFit.mark());
    List<IssuedForecast> forecasts = new ArrayList<>();
    for (byte[] forecast : issued.all()) {
      forecasts.add(ForecastReader.unpack(forecast));
    }
    output.collect(
        new StreamRecord<>(new Upsert(RowsOf.subject(key, events, criteria, lastFit, forecasts))));
    return events;
  }
}
