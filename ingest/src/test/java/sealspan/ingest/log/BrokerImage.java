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

  /** Skips a test, and says why, on a machine without Docker or without the image. */
  @Retention(RetentionPolicy.RUNTIME)
  @ExtendWith(BrokerImage.class)
  @interface Needed {}

  /** A broker in a container, not yet started; never fetched from anywhere. */
  static KafkaContainer container() {
    return new KafkaContainer(DockerImageName.parse(TAG).asCompatibleSubstituteFor("apache/kafka"))
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
