package sealspan.jobs;

import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import sealspan.study.FitCut;
import sealspan.table.ResultTopics;

/**
 * The bounded job: the events of a cut in, the fit of every stratum and the study of fouling out.
 * The result depends on the events, the criteria and the cut alone, not on order or parallelism.
 */
final class FittingGraph {
  private FittingGraph() {}

  /** Builds the job; the cut holds at least one event. */
  static void build(StreamExecutionEnvironment env, JobSettings job, FitCut cut) {
    DataStream<Addressed> events =
        env.fromSource(
            LogConnections.events(job, cut),
            WatermarkStrategy.noWatermarks(),
            "events of the cut",
            Addressed.TYPE);
    DataStream<Upsert> fits =
        Routing.assembliesAndZones(events)
            .keyBy(new HistoryKey())
            .process(new MemberRows(job.criteria()), Member.TYPE)
            .name("histories")
            .keyBy(new StratumKey())
            .process(new StratumFit(cut), Upsert.TYPE)
            .name("fits");
    // An exchange begins when all before it is done: so all fits are shown together, and every
    // history is scored once.
    DataStream<Upsert> together = fits.global();
    together
        .sinkTo(LogConnections.sink(job, ResultTopics.rows(job.generation())))
        .name("rows")
        .setParallelism(1);
    together
        .flatMap(new WithoutCurves())
        .returns(Upsert.TYPE)
        .setParallelism(1)
        .sinkTo(LogConnections.sink(job, ResultTopics.fits(job.generation())))
        .name("fits for scores")
        .setParallelism(1);
  }
}
