package sealspan.jobs;

import org.apache.flink.api.common.accumulators.LongCounter;
import org.apache.flink.api.common.functions.OpenContext;
import org.apache.flink.api.common.functions.RichMapFunction;

/** Counts the events that pass, as they come from the log, each once. */
final class CountedEvents extends RichMapFunction<Addressed, Addressed> {
  private static final long serialVersionUID = 1L;

  private final LongCounter read = new LongCounter();

  @Override
  public void open(OpenContext context) {
    getRuntimeContext().addAccumulator(JobProgress.READ, read);
  }

  @Override
  public Addressed map(Addressed passing) {
    if (!passing.isReference()) {
      read.add(1);
    }
    return passing;
  }
}
