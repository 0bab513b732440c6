package sealspan.jobs;

import org.apache.flink.api.common.functions.MapFunction;
import sealspan.avro.TableCodec;
import sealspan.table.FitRows;

/** The part of a fit that scores need. */
final class WithoutCurves implements MapFunction<Upsert, Upsert> {
  private static final long serialVersionUID = 1L;

  @Override
  public Upsert map(Upsert upsert) {
    return new Upsert(TableCodec.decode(upsert.value, FitRows.class).forScores());
  }
}
