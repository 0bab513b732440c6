package sealspan.jobs;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import org.apache.flink.api.connector.source.ReaderOutput;
import org.apache.flink.api.connector.source.SourceEvent;
import org.apache.flink.api.connector.source.SourceReader;
import org.apache.flink.connector.kafka.source.split.KafkaPartitionSplit;
import org.apache.flink.core.io.InputStatus;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.TopicPartition;

/**
 * Reads as another reader does, and commits where it was when a checkpoint was made. Nothing is
 * read before the first one: it would send on histories of which little was read, and all of them
 * again later.
 */
final class CommittingReader implements SourceReader<Addressed, KafkaPartitionSplit> {
  private final SourceReader<Addressed, KafkaPartitionSplit> reader;
  private final OffsetCommits commits;
  private final TreeMap<Long, Map<TopicPartition, OffsetAndMetadata>> byCheckpoint =
      new TreeMap<>();

  private final CompletableFuture<Void> firstCheckpoint = new CompletableFuture<>();

  CommittingReader(SourceReader<Addressed, KafkaPartitionSplit> reader, OffsetCommits commits) {
    this.reader = reader;
    this.commits = commits;
  }

  @Override
  public List<KafkaPartitionSplit> snapshotState(long checkpoint) {
    List<KafkaPartitionSplit> splits = reader.snapshotState(checkpoint);
    Map<TopicPartition, OffsetAndMetadata> offsets = new HashMap<>();
    for (KafkaPartitionSplit split : splits) {
      if (split.getStartingOffset() >= 0) { // Below 0 it says where to begin: nothing was read.
        offsets.put(split.getTopicPartition(), new OffsetAndMetadata(split.getStartingOffset()));
      }
    }
    byCheckpoint.put(checkpoint, offsets);
    firstCheckpoint.complete(null);
    return splits;
  }

  @Override
  public void notifyCheckpointComplete(long checkpoint) throws Exception {
    reader.notifyCheckpointComplete(checkpoint);
    Map<TopicPartition, OffsetAndMetadata> offsets = byCheckpoint.get(checkpoint);
    byCheckpoint.headMap(checkpoint, true).clear();
    if (offsets != null) {
      commits.commit(offsets);
    }
  }

  @Override
  public void notifyCheckpointAborted(long checkpoint) throws Exception {
    reader.notifyCheckpointAborted(checkpoint);
    byCheckpoint.remove(checkpoint);
  }

  @Override
  public void start() {
    reader.start();
  }

  @Override
  public InputStatus pollNext(ReaderOutput<Addressed> output) throws Exception {
    return firstCheckpoint.isDone() ? reader.pollNext(output) : InputStatus.NOTHING_AVAILABLE;
  }

  @Override
  public CompletableFuture<Void> isAvailable() {
    return firstCheckpoint.isDone() ? reader.isAvailable() : firstCheckpoint;
  }

  @Override
  public void addSplits(List<KafkaPartitionSplit> splits) {
    reader.addSplits(splits);
  }

  @Override
  public void notifyNoMoreSplits() {
    reader.notifyNoMoreSplits();
  }

  @Override
  public void handleSourceEvents(SourceEvent event) {
    reader.handleSourceEvents(event);
  }

  @Override
  public void pauseOrResumeSplits(Collection<String> pause, Collection<String> resume) {
    reader.pauseOrResumeSplits(pause, resume);
  }

  @Override
  public void close() throws Exception {
    commits.close();
    reader.close();
  }
}
