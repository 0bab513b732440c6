package sealspan.ingest.archive;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) in hex. */
final class Digests {
  private static final int PIECE = 1 << 16;

  private Digests() {}

  static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  static String of(Path file) throws IOException {
    MessageDigest digest = sha256();
    byte[] piece = new byte[PIECE];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
        digest.update(piece, 0, n);
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
