package sealspan.jobs;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.apache.flink.api.common.BatchShuffleMode;
import org.apache.flink.api.common.ExecutionConfig.ClosureCleanerLevel;
import org.apache.flink.api.common.RuntimeExecutionMode;
import org.apache.flink.configuration.BatchExecutionOptions;
import org.apache.flink.configuration.CheckpointingOptions;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.configuration.CoreOptions;
import org.apache.flink.configuration.ExecutionOptions;
import org.apache.flink.configuration.ExternalizedCheckpointRetention;
import org.apache.flink.configuration.HeartbeatManagerOptions;
import org.apache.flink.configuration.JobManagerOptions;
import org.apache.flink.configuration.MemorySize;
import org.apache.flink.configuration.NettyShuffleEnvironmentOptions;
import org.apache.flink.configuration.PipelineOptions;
import org.apache.flink.configuration.RestOptions;
import org.apache.flink.configuration.RestartStrategyOptions;
import org.apache.flink.configuration.StateBackendOptions;
import org.apache.flink.configuration.StateRecoveryOptions;
import org.apache.flink.configuration.TaskManagerOptions;
import org.apache.flink.configuration.WebOptions;
import org.apache.flink.core.execution.CheckpointingMode;
import org.apache.flink.core.execution.RecoveryClaimMode;
import org.apache.flink.state.rocksdb.RocksDBConfigurableOptions;
import org.apache.flink.state.rocksdb.RocksDBOptions;
import org.rocksdb.CompressionType;

/** Flink's settings for the two jobs and for the cluster of one process. */
final class FlinkConfiguration {
  private static final String LOOPBACK = "127.0.0.1";
  private static final long LEAST_STATE_MB = 384;
  private static final long MOST_STATE_MB = 1_024;

  private FlinkConfiguration() {}

  /**
   * For the continuous job.
   *
   * @param folder where its checkpoints go
   * @param interval time from one checkpoint to the next
   * @param resumeFrom checkpoint to begin from; empty for the first event
   */
  static Configuration histories(
      JobSettings job,
      StateKept stateKept,
      String folder,
      Duration interval,
      Optional<String> resumeFrom) {
    Configuration c = job("sealspan histories " + job.generation(), job);
    c.set(ExecutionOptions.RUNTIME_MODE, RuntimeExecutionMode.STREAMING);
    // Nothing is changed once it is handed on, so it need not be copied for who comes next.
    c.set(PipelineOptions.OBJECT_REUSE, true);
    c.set(StateBackendOptions.STATE_BACKEND, stateKept.backend());
    // Most events are new: without a filter each would be looked for in every file of the state.
    c.set(RocksDBConfigurableOptions.USE_BLOOM_FILTER, true);
    // Whole filters and indexes of a large state push one another and all data out of the cache.
    c.set(RocksDBOptions.USE_PARTITIONED_INDEX_FILTERS, true);
    c.set(
        RocksDBConfigurableOptions.COMPRESSION_PER_LEVEL, List.of(CompressionType.LZ4_COMPRESSION));
    c.set(RocksDBOptions.OPTIONS_FACTORY, FewMerges.class.getName());
    c.set(CheckpointingOptions.INCREMENTAL_CHECKPOINTS, stateKept == StateKept.ROCKSDB);
    c.set(CheckpointingOptions.CHECKPOINTING_CONSISTENCY_MODE, CheckpointingMode.EXACTLY_ONCE);
    // The committed offsets promise that the rows are there: no event may lie between operators.
    c.set(CheckpointingOptions.ENABLE_UNALIGNED, false);
    c.set(CheckpointingOptions.CHECKPOINTING_INTERVAL, interval);
    // By this Flink makes the first at once, which the reading of events waits for.
    c.set(CheckpointingOptions.PAUSE_SOURCES_UNTIL_FIRST_CHECKPOINT, true);
    c.set(CheckpointingOptions.CHECKPOINTING_TIMEOUT, Duration.ofHours(1));
    c.set(CheckpointingOptions.MAX_RETAINED_CHECKPOINTS, 2);
    c.set(CheckpointingOptions.CHECKPOINTS_DIRECTORY, folder);
    c.set(CheckpointingOptions.CREATE_CHECKPOINT_SUB_DIR, false);
    c.set(
        CheckpointingOptions.EXTERNALIZED_CHECKPOINT_RETENTION,
        ExternalizedCheckpointRetention.RETAIN_ON_CANCELLATION);
    c.set(RestartStrategyOptions.RESTART_STRATEGY, "exponential-delay");
    c.set(
        RestartStrategyOptions.RESTART_STRATEGY_EXPONENTIAL_DELAY_INITIAL_BACKOFF,
        Duration.ofMillis(500));
    c.set(
        RestartStrategyOptions.RESTART_STRATEGY_EXPONENTIAL_DELAY_MAX_BACKOFF,
        Duration.ofSeconds(15));
    c.set(
        RestartStrategyOptions.RESTART_STRATEGY_EXPONENTIAL_DELAY_RESET_BACKOFF_THRESHOLD,
        Duration.ofMinutes(1));
    c.set(RestartStrategyOptions.RESTART_STRATEGY_EXPONENTIAL_DELAY_ATTEMPTS, 10);
    if (resumeFrom.isPresent()) {
      c.set(StateRecoveryOptions.SAVEPOINT_PATH, resumeFrom.get());
      c.set(StateRecoveryOptions.RESTORE_MODE, RecoveryClaimMode.CLAIM);
    }
    return c;
  }

  /**
   * For the bounded job: sorted by key on disk, so that it needs little memory beside the other.
   */
  static Configuration fitting(JobSettings job) {
    Configuration c = job("sealspan fitting " + job.generation(), job);
    c.set(ExecutionOptions.RUNTIME_MODE, RuntimeExecutionMode.BATCH);
    c.set(ExecutionOptions.BATCH_SHUFFLE_MODE, BatchShuffleMode.ALL_EXCHANGES_BLOCKING);
    c.set(BatchExecutionOptions.ADAPTIVE_AUTO_PARALLELISM_ENABLED, false);
    c.set(RestartStrategyOptions.RESTART_STRATEGY, "none");
    return c;
  }

  private static Configuration job(String name, JobSettings job) {
    Configuration c = new Configuration();
    c.set(PipelineOptions.NAME, name);
    c.set(PipelineOptions.GENERIC_TYPES, false);
    c.set(PipelineOptions.CLOSURE_CLEANER_LEVEL, ClosureCleanerLevel.NONE);
    c.set(CoreOptions.DEFAULT_PARALLELISM, job.parallelism());
    c.set(PipelineOptions.MAX_PARALLELISM, 128);
    return c;
  }

  /** For a cluster inside this process: little memory, no door to other machines. */
  static Configuration cluster(Path workFolder) {
    Configuration c = new Configuration();
    c.set(HeartbeatManagerOptions.HEARTBEAT_INTERVAL, Duration.ofSeconds(1)); // brings progress
    c.set(CoreOptions.TMP_DIRS, workFolder.toAbsolutePath().toString());
    c.set(TaskManagerOptions.NETWORK_MEMORY_MIN, MemorySize.ofMebiBytes(48));
    c.set(TaskManagerOptions.NETWORK_MEMORY_MAX, MemorySize.ofMebiBytes(48));
    c.set(TaskManagerOptions.MANAGED_MEMORY_SIZE, MemorySize.ofMebiBytes(stateMb()));
    c.set(NettyShuffleEnvironmentOptions.NETWORK_SORT_SHUFFLE_MIN_BUFFERS, 64);
    c.set(TaskManagerOptions.NETWORK_BATCH_SHUFFLE_READ_MEMORY, MemorySize.ofMebiBytes(32));
    c.set(TaskManagerOptions.BIND_HOST, LOOPBACK);
    c.set(JobManagerOptions.BIND_HOST, LOOPBACK);
    c.set(RestOptions.ADDRESS, LOOPBACK);
    c.set(RestOptions.BIND_ADDRESS, LOOPBACK);
    c.set(RestOptions.BIND_PORT, "0");
    c.set(WebOptions.SUBMIT_ENABLE, false);
    c.set(WebOptions.CANCEL_ENABLE, false);
    return c;
  }

  /**
   * Memory for the state in files and for sorting: a sixteenth of this machine's, within limits.
   */
  private static long stateMb() {
    long memoryBytes =
        ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean machine
            ? machine.getTotalMemorySize()
            : 0;
    return Math.max(LEAST_STATE_MB, Math.min(MOST_STATE_MB, memoryBytes / 16 >> 20));
  }
}
