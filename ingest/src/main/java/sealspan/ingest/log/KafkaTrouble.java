package sealspan.ingest.log;

import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.common.config.ConfigException;
import org.apache.kafka.common.errors.AuthenticationException;
import org.apache.kafka.common.errors.AuthorizationException;
import org.apache.kafka.common.errors.InterruptException;
import org.apache.kafka.common.errors.RecordTooLargeException;
import org.apache.kafka.common.errors.TimeoutException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;

/** Turns what Kafka's clients throw into words. */
final class KafkaTrouble {
  private KafkaTrouble() {}

  /** The exception to throw for trouble while {@code doing} something, such as "reading X". */
  static LogException of(String doing, KafkaAddress address, Throwable thrown) {
    Throwable cause = thrown;
    while ((cause instanceof ExecutionException || cause instanceof CompletionException)
        && cause.getCause() != null) {
      cause = cause.getCause();
    }
    if (cause instanceof InterruptException || cause instanceof InterruptedException) {
      Thread.currentThread().interrupt();
      return new LogException("Stopped while " + doing + ".", cause);
    }
    return new LogException(
        "Trouble while " + doing + ": " + reason(cause, address.bootstrapServers()), cause);
  }

  private static String reason(Throwable cause, String servers) {
    if (cause instanceof TimeoutException) {
      return "no answer from Kafka at "
          + servers
          + ". Is it running, and is the address right? Its disk may also be full.";
    }
    if (cause instanceof AuthenticationException) {
      return "Kafka at "
          + servers
          + " did not accept the credentials. Check the client properties.";
    }
    if (cause instanceof AuthorizationException) {
      return "Kafka at "
          + servers
          + " does not allow it. The user needs to create, describe, read and write the topics"
          + " sealspan.*.";
    }
    if (cause instanceof RecordTooLargeException) {
      return "an entry is too large for a record: " + cause.getMessage();
    }
    if (cause instanceof UnknownTopicOrPartitionException) {
      return "the topic is gone from Kafka at " + servers + ". Someone deleted it.";
    }
    Throwable config = cause instanceof ConfigException ? cause : cause.getCause();
    if (config instanceof ConfigException) {
      return config.getMessage() + ". Check the address and the client properties.";
    }
    return cause.getMessage() == null ? cause.toString() : cause.getMessage();
  }
}
