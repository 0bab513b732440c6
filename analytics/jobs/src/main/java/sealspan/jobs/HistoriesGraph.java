package sealspan.jobs;

import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.datastream.SingleOutputStreamOperator;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import sealspan.table.ResultTopics;

/**
 * The continuous job: events, fits, forecasts and models of the watch in, the rows of every
 * assembly and zone and of the watch out. When a checkpoint completes, the offsets that its group
 * commits say how far the rows are.
 */
final class HistoriesGraph {
  private HistoriesGraph() {}

  static void build(StreamExecutionEnvironment env, JobSettings job) {
    DataStream<Addressed> events =
        env.fromSource(
                LogConnections.events(job),
                WatermarkStrategy.noWatermarks(),
                "events",
                Addressed.TYPE)
            .uid("events")
            .map(new CountedEvents())
            .returns(Addressed.TYPE)
            .name("events read")
            .uid("events-read");
    DataStream<byte[]> fits =
        env.fromSource(LogConnections.fits(job), WatermarkStrategy.noWatermarks(), "fits")
            .setParallelism(1)
            .uid("fits");
    DataStream<Addressed> forecasts =
        env.fromSource(
                LogConnections.forecasts(job),
                WatermarkStrategy.noWatermarks(),
                "forecasts",
                Addressed.TYPE)
            .setParallelism(1)
            .uid("forecasts");
    DataStream<Watched> models =
        env.fromSource(
                LogConnections.watchModels(job),
                WatermarkStrategy.noWatermarks(),
                "watch models",
                Watched.TYPE)
            .setParallelism(1)
            .uid("watch-models");
    SingleOutputStreamOperator<Upsert> histories =
        Routing.assemblies(events)
            .union(Routing.zones(events), forecasts)
            .keyBy(new HistoryKey())
            .connect(fits.broadcast())
            .transform("histories", Upsert.TYPE, new HistoryFold(job.criteria()))
            .uid("histories");
    DataStream<Upsert> watch =
        histories
            .getSideOutput(HistoryFold.WATCHED)
            .union(models)
            .keyBy(new WatchKey())
            .transform("watch", Upsert.TYPE, new WatchFold())
            .setParallelism(1)
            .uid("watch");
    histories
        .union(watch)
        .sinkTo(LogConnections.sink(job, ResultTopics.rows(job.generation())))
        .name("rows")
        .uid("rows");
  }
}
