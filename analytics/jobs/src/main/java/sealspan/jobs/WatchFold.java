package sealspan.jobs;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.flink.api.common.state.MapState;
import org.apache.flink.api.common.state.MapStateDescriptor;
import org.apache.flink.api.common.typeinfo.PrimitiveArrayTypeInfo;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.runtime.state.StateInitializationContext;
import org.apache.flink.streaming.api.operators.AbstractStreamOperator;
import org.apache.flink.streaming.api.operators.OneInputStreamOperator;
import org.apache.flink.streaming.runtime.streamrecord.StreamRecord;
import sealspan.avro.TableCodec;
import sealspan.study.watch.WatchBook;
import sealspan.table.LedgerEntry;

/**
 * Keeps what the watch over fouling has been told, and sends its rows on when that has changed: a
 * little later, but always before a checkpoint. The state is what it was told; where the watch
 * stands is worked out from it again after a restart.
 */
final class WatchFold extends AbstractStreamOperator<Upsert>
    implements OneInputStreamOperator<Watched, Upsert> {
  private static final long serialVersionUID = 1L;

  private static final MapStateDescriptor<String, byte[]> TESTS =
      new MapStateDescriptor<>(
          "tests", Types.STRING, PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO);
  private static final MapStateDescriptor<String, byte[]> MODELS =
      new MapStateDescriptor<>(
          "models", Types.STRING, PrimitiveArrayTypeInfo.BYTE_PRIMITIVE_ARRAY_TYPE_INFO);

  private transient MapState<String, byte[]> tests;
  private transient MapState<String, byte[]> models;
  private transient WatchBook book;

  /** Events of all histories and models: both only grow, so the revision does. */
  private transient long revision;

  private transient SendPace pace;
  private transient boolean changed;
  private transient boolean armed;

  @Override
  public void initializeState(StateInitializationContext context) throws Exception {
    super.initializeState(context);
    tests = context.getKeyedStateStore().getMapState(TESTS);
    models = context.getKeyedStateStore().getMapState(MODELS);
  }

  @Override
  public void open() throws Exception {
    super.open();
    pace = new SendPace();
  }

  @Override
  public void processElement(StreamRecord<Watched> record) throws Exception {
    if (book == null) {
      recall();
    }
    Watched told = record.getValue();
    if (told.what == Watched.What.MODEL) {
      changed |= addModel(told);
    } else {
      byte[] before = tests.get(told.id);
      revision -= before == null ? 0 : WatchedBytes.unpack(before).events();
      tests.put(told.id, told.content);
      putTests(told.id, told.content);
      changed = true;
    }
    if (changed) {
      arm();
    }
  }

  private boolean addModel(Watched told) throws Exception {
    if (models.contains(told.id)) {
      return false;
    }
    models.put(told.id, told.content);
    book.add(List.of(TableCodec.decode(told.content, LedgerEntry.class)));
    revision++;
    return true;
  }

  private void putTests(String assemblyId, byte[] packed) {
    WatchedBytes told = WatchedBytes.unpack(packed);
    revision += told.events();
    book.put(assemblyId, told.tests());
  }

  private void recall() throws Exception {
    book = new WatchBook();
    revision = 0;
    List<LedgerEntry> entries = new ArrayList<>();
    for (byte[] model : models.values()) {
      entries.add(TableCodec.decode(model, LedgerEntry.class));
      revision++;
    }
    book.add(entries);
    for (Map.Entry<String, byte[]> each : tests.entries()) {
      putTests(each.getKey(), each.getValue());
    }
  }

  @Override
  public void prepareSnapshotPreBarrier(long checkpointId) throws Exception {
    send();
  }

  @Override
  public void finish() throws Exception {
    send();
    super.finish();
  }

  private void arm() {
    if (!armed) {
      armed = true;
      long now = getProcessingTimeService().getCurrentProcessingTime();
      getProcessingTimeService().registerTimer(pace.dueMillis(now), this::onTimer);
    }
  }

  private void onTimer(long due) {
    armed = false;
    long begin = System.nanoTime();
    send();
    pace.took(System.nanoTime() - begin);
  }

  private void send() {
    if (changed) {
      changed = false;
      book.rows(revision).ifPresent(rows -> output.collect(new StreamRecord<>(new Upsert(rows))));
    }
  }
}
