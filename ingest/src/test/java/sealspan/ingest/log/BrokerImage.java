package sealspan.ingest.log;

import com.github.dockerjava.api.exception.NotFoundException;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.kafka.KafkaContainer;
import org.testcontainers.utility.DockerImageName;

/** The image of a Kafka broker that src/test/docker/build-image.sh makes. */
final class BrokerImage implements ExecutionCondition {
  static final String TAG = "sealspan/kafka-broker:test";

  /**
   * Waits for the script that Testcontainers copies into the running container, and runs it. A
   * script that is still being written cannot be run (status 126, text file busy): it is tried
   * again.
   */
  private static final String START_WHEN_WRITTEN =
      """
      script=/tmp/testcontainers_start.sh
      until [ -f $script ]; do sleep 0.1; done
      for try in 1 2 3 4 5 6 7 8 9 10; do
        $script
        status=$?
        [ $status -eq 126 ] || exit $status
        sleep 0.3
      done
      exit $status
      """;

  /** Skips a test, and says why, on a machine without Docker or without the image. */
  @Retention(RetentionPolicy.RUNTIME)
  @ExtendWith(BrokerImage.class)
  @interface Needed {}

  /** A broker in a container, not yet started; never fetched from anywhere. */
  static KafkaContainer container() {
    return new KafkaContainer(DockerImageName.parse(TAG).asCompatibleSubstituteFor("apache/kafka"))
        .withCommand("sh", "-c", START_WHEN_WRITTEN)
        .withImagePullPolicy(name -> false);
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    if (!DockerClientFactory.instance().isDockerAvailable()) {
      return ConditionEvaluationResult.disabled(
          "Docker does not run here; the log was tested against the child-process broker only");
    }
    try {
      DockerClientFactory.lazyClient().inspectImageCmd(TAG).exec();
      return ConditionEvaluationResult.enabled("the image is there");
    } catch (NotFoundException e) {
      return ConditionEvaluationResult.disabled(
          "Docker has no image " + TAG + "; build it by ingest/src/test/docker/build-image.sh");
    }
  }
}
