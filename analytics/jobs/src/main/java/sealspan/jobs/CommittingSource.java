package sealspan.jobs;

import java.io.IOException;
import java.util.Properties;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.connector.source.Boundedness;
import org.apache.flink.api.connector.source.Source;
import org.apache.flink.api.connector.source.SourceReader;
import org.apache.flink.api.connector.source.SourceReaderContext;
import org.apache.flink.api.connector.source.SplitEnumerator;
import org.apache.flink.api.connector.source.SplitEnumeratorContext;
import org.apache.flink.api.java.typeutils.ResultTypeQueryable;
import org.apache.flink.connector.kafka.source.KafkaSource;
import org.apache.flink.connector.kafka.source.enumerator.KafkaSourceEnumState;
import org.apache.flink.connector.kafka.source.split.KafkaPartitionSplit;
import org.apache.flink.core.io.SimpleVersionedSerializer;

/**
 * A Kafka source that commits the offsets of a checkpoint as soon as it completes. The source alone
 * does so only when its present poll ends, which on a quiet log is up to ten seconds later, and
 * until then no reader could know that the results are complete.
 */
final class CommittingSource
    implements Source<Addressed, KafkaPartitionSplit, KafkaSourceEnumState>,
        ResultTypeQueryable<Addressed> {
  private static final long serialVersionUID = 1L;

  private final KafkaSource<Addressed> source;
  private final Properties clients;
  private final String group;

  CommittingSource(KafkaSource<Addressed> source, Properties clients, String group) {
    this.source = source;
    this.clients = clients;
    this.group = group;
  }

  @Override
  public SourceReader<Addressed, KafkaPartitionSplit> createReader(SourceReaderContext context)
      throws Exception {
    return new CommittingReader(source.createReader(context), new OffsetCommits(clients, group));
  }

  @Override
  public Boundedness getBoundedness() {
    return source.getBoundedness();
  }

  @Override
  public SplitEnumerator<KafkaPartitionSplit, KafkaSourceEnumState> createEnumerator(
      SplitEnumeratorContext<KafkaPartitionSplit> context) {
    return source.createEnumerator(context);
  }

  @Override
  public SplitEnumerator<KafkaPartitionSplit, KafkaSourceEnumState> restoreEnumerator(
      SplitEnumeratorContext<KafkaPartitionSplit> context, KafkaSourceEnumState state)
      throws IOException {
    return source.restoreEnumerator(context, state);
  }

  @Override
  public SimpleVersionedSerializer<KafkaPartitionSplit> getSplitSerializer() {
    return source.getSplitSerializer();
  }

  @Override
  public SimpleVersionedSerializer<KafkaSourceEnumState> getEnumeratorCheckpointSerializer() {
    return source.getEnumeratorCheckpointSerializer();
  }

  @Override
  public TypeInformation<Addressed> getProducedType() {
    return Addressed.TYPE;
  }
}
