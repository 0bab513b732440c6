package sealspan.jobs;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Properties;
import org.apache.flink.connector.base.DeliveryGuarantee;
import org.apache.flink.connector.kafka.sink.KafkaSink;
import org.apache.flink.connector.kafka.source.KafkaSource;
import org.apache.flink.connector.kafka.source.enumerator.initializer.OffsetsInitializer;
import org.apache.kafka.common.TopicPartition;
import sealspan.event.Topics;
import sealspan.study.FitCut;
import sealspan.table.ResultTopics;

/** The jobs' sources and sinks. */
final class LogConnections {
  /** A zone or an assembly with very many events makes one large record. */
  static final int LARGEST_RECORD_BYTES = 64 << 20;

  private LogConnections() {}

  /** All events, for ever; the group of the generation commits how far the checkpoints are. */
  static CommittingSource events(JobSettings job) {
    KafkaSource<Addressed> source =
        KafkaSource.<Addressed>builder()
            .setProperties(job.clients())
            .setTopics(Topics.EVENTS)
            .setStartingOffsets(OffsetsInitializer.earliest())
            .setDeserializer(new EventReader())
            .setProperty("commit.offsets.on.checkpoint", "false")
            .setClientIdPrefix("sealspan-histories-" + job.generation())
            .build();
    return new CommittingSource(
        source, job.clients(), ResultTopics.historiesGroup(job.generation()));
  }

  /** The events that are in a cut; a cut holds some. */
  static KafkaSource<Addressed> events(JobSettings job, FitCut cut) {
    Map<TopicPartition, Long> ends = offsets(cut);
    return KafkaSource.<Addressed>builder()
        .setProperties(job.clients())
        .setPartitions(new HashSet<>(ends.keySet()))
        .setStartingOffsets(OffsetsInitializer.earliest())
        .setBounded(OffsetsInitializer.offsets(ends))
        .setDeserializer(new EventReader())
        .setProperty("commit.offsets.on.checkpoint", "false")
        .setClientIdPrefix("sealspan-fitting-" + job.generation())
        .build();
  }

  /** The offset after the last event of each partition that has events in the cut. */
  static Map<TopicPartition, Long> offsets(FitCut cut) {
    Map<TopicPartition, Long> offsets = new HashMap<>();
    for (String part : cut.offsets().isEmpty() ? new String[0] : cut.offsets().split(",", -1)) {
      if (!part.matches("[0-9]{1,9}:[0-9]{1,18}")) {
        throw new IllegalArgumentException(
            "The offsets of a cut read PARTITION:OFFSET with commas, not " + cut.offsets());
      }
      int colon = part.indexOf(':');
      long end = Long.parseLong(part.substring(colon + 1));
      if (end > 0) {
        int partition = Integer.parseInt(part.substring(0, colon));
        offsets.put(new TopicPartition(Topics.EVENTS, partition), end);
      }
    }
    return offsets;
  }

  /** The forecasts in the ledger, for ever. */
  static KafkaSource<Addressed> forecasts(JobSettings job) {
    return KafkaSource.<Addressed>builder()
        .setProperties(job.clients())
        .setTopics(Topics.LEDGER)
        .setStartingOffsets(OffsetsInitializer.earliest())
        .setDeserializer(new ForecastReader())
        .setProperty("commit.offsets.on.checkpoint", "false")
        .setClientIdPrefix("sealspan-forecasts-" + job.generation())
        .build();
  }

  /** The models of the watch over fouling in the ledger, for ever. */
  static KafkaSource<Watched> watchModels(JobSettings job) {
    return KafkaSource.<Watched>builder()
        .setProperties(job.clients())
        .setTopics(Topics.LEDGER)
        .setStartingOffsets(OffsetsInitializer.earliest())
        .setDeserializer(new WatchModelReader())
        .setProperty("commit.offsets.on.checkpoint", "false")
        .setClientIdPrefix("sealspan-watch-models-" + job.generation())
        .build();
  }

  /** The fits of the generation, for ever. */
  static KafkaSource<byte[]> fits(JobSettings job) {
    return KafkaSource.<byte[]>builder()
        .setProperties(job.clients())
        .setTopics(ResultTopics.fits(job.generation()))
        .setStartingOffsets(OffsetsInitializer.earliest())
        .setDeserializer(new FitReader())
        .setProperty("commit.offsets.on.checkpoint", "false")
        .setClientIdPrefix("sealspan-fits-" + job.generation())
        .build();
  }

  /** A result topic; everything handed over before a checkpoint is there when it completes. */
  static KafkaSink<Upsert> sink(JobSettings job, String topic) {
    Properties producer = job.clients();
    producer.setProperty("acks", "all");
    producer.setProperty("compression.type", "lz4");
    // Rows count from a checkpoint on, which waits for none; else each costs the log a request.
    producer.setProperty("linger.ms", "100");
    producer.setProperty("batch.size", String.valueOf(256 << 10));
    producer.setProperty("max.request.size", String.valueOf(LARGEST_RECORD_BYTES));
    producer.setProperty("buffer.memory", String.valueOf(LARGEST_RECORD_BYTES));
    return KafkaSink.<Upsert>builder()
        .setKafkaProducerConfig(producer)
        .setBootstrapServers(job.bootstrapServers())
        .setDeliveryGuarantee(DeliveryGuarantee.AT_LEAST_ONCE)
        .setRecordSerializer(new UpsertWriter(topic))
        .build();
  }
}
