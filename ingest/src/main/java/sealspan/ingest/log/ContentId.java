package sealspan.ingest.log;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Ids that follow from content. */
final class ContentId {
  private static final int ID_BYTES = 16;
  private static final ThreadLocal<MessageDigest> SHA_256 =
      ThreadLocal.withInitial(ContentId::sha256);

  private ContentId() {}

  /** 32 hex digits of the SHA-256 over the parts; an absent part differs from an empty one. */
  static String of(String... parts) {
    MessageDigest digest = SHA_256.get();
    for (String part : parts) {
      byte[] bytes = part == null ? null : part.getBytes(StandardCharsets.UTF_8);
      digest.update(ByteBuffer.allocate(4).putInt(bytes == null ? -1 : bytes.length).array());
      if (bytes != null) {
        digest.update(bytes);
      }
    }
    return HexFormat.of().formatHex(digest.digest(), 0, ID_BYTES);
  }

  /** The first eight bytes of an id made by {@link #of}. */
  static long leading(String id) {
    return Long.parseUnsignedLong(id, 0, 16, 16);
  }

  /** The first eight bytes of the SHA-256 of some bytes. */
  static long leading(byte[] bytes) {
    return ByteBuffer.wrap(SHA_256.get().digest(bytes)).getLong();
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256.", e);
    }
  }
}
