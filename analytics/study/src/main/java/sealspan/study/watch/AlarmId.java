package sealspan.study.watch;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The id of an alarm: the same content has the same id, in whichever job or rebuild. */
final class AlarmId {
  private static final int DIGITS = 12;

  private AlarmId() {}

  static String of(String run, String eventId, String zone, String modelId, long test) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(String.join("\n", run, eventId, zone, modelId, "" + test).getBytes(UTF_8));
      return "A-" + HexFormat.of().formatHex(digest).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256.", e);
    }
  }
}
