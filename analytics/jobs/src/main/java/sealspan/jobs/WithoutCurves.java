package sealspan.jobs;

import org.apache.flink.api.common.functions.FlatMapFunction;
import org.apache.flink.util.Collector;
import sealspan.avro.TableCodec;
import sealspan.table.Bundle;
import sealspan.table.FitRows;

/** Of what a cut gave, the fits, and of these the part that scores need. */
final class WithoutCurves implements FlatMapFunction<Upsert, Upsert> {
  private static final long serialVersionUID = 1L;

  @Override
  public void flatMap(Upsert upsert, Collector<Upsert> out) {
    if (TableCodec.decode(upsert.value, Bundle.class) instanceof FitRows fit) {
      out.collect(new Upsert(fit.forScores()));
    }
  }
}
