package sealspan.event;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * The natural key of an event, from which its id follows where the source gives none. Two events
 * with one key are the same event: with equal content a duplicate, with other content a conflict.
 *
 * <p>A report's key is its source and report number; without a number it is assembly, day, phase
 * and sequence.
 */
public final class NaturalKey {
  /** Name space of the ids, itself the UUIDv5 of {@code sealspan} in the DNS name space. */
  private static final UUID NAME_SPACE = UUID.fromString("66a7e0d1-488a-5da4-941b-80b5d794385c");

  private static final byte[] NAME_SPACE_BYTES =
      ByteBuffer.allocate(16)
          .putLong(NAME_SPACE.getMostSignificantBits())
          .putLong(NAME_SPACE.getLeastSignificantBits())
          .array();

  private static final ThreadLocal<MessageDigest> SHA_1 = ThreadLocal.withInitial(NaturalKey::sha1);

  private NaturalKey() {}

  /** The id of an event that has none of its own: a UUIDv5 (RFC 9562) of its natural key. */
  public static String idOf(String source, AssemblyEvent event) {
    return uuid5(String.join("\u001f", of(source, event))).toString();
  }

  /** The parts of the key, the type first; a part that was not recorded is empty. */
  public static List<String> of(String source, AssemblyEvent event) {
    List<String> key = new ArrayList<>();
    key.add(event.getClass().getSimpleName());
    for (Object part : parts(source, event)) {
      key.add(part == null ? "" : part.toString());
    }
    return key;
  }

  private static Object[] parts(String source, AssemblyEvent event) {
    if (event instanceof TestPerformed e) {
      return report(source, e.reportNumber(), e.assemblyId(), e.when(), e.phase(), e.visit());
    }
    if (event instanceof RepairPerformed e) {
      return report(source, e.reportNumber(), e.assemblyId(), e.when(), "REPAIR", e.visit());
    }
    if (event instanceof InspectionPerformed e) {
      return report(source, e.reportNumber(), e.assemblyId(), e.when(), e.kind(), e.visit());
    }
    if (event instanceof AssemblyInstalled e) {
      return new Object[] {e.assemblyId(), e.positionId(), e.when().day()};
    }
    if (event instanceof SiteDescribed e) {
      return new Object[] {e.siteId(), e.positionId(), e.when().day()};
    }
    if (event instanceof VisitAttempted e) {
      return new Object[] {e.assemblyId(), e.when().day(), e.visitId()};
    }
    if (event instanceof JobCosted e) {
      return new Object[] {e.assemblyId(), e.when().day(), e.visitId(), e.contractId()};
    }
    if (event instanceof WaterSampled e) {
      return new Object[] {
        e.providerId(),
        e.stationId(),
        e.activityId(),
        e.resultId(),
        e.characteristic(),
        e.fraction(),
        e.when().day(),
        e.when().minuteOfDay()
      };
    }
    if (event instanceof WaterDisturbed e) {
      return e.disturbanceId() != null
          ? new Object[] {source, e.disturbanceId()}
          : new Object[] {e.zoneId(), e.kind(), e.when().day(), e.when().minuteOfDay()};
    }
    if (event instanceof TesterCertified e) {
      return new Object[] {e.testerId(), e.certificateNumber(), e.when().day()};
    }
    if (event instanceof EventCorrected e) {
      return new Object[] {e.targetEventId(), e.when().day(), e.when().minuteOfDay(), e.why()};
    }
    if (event instanceof EventVoided e) {
      return new Object[] {e.targetEventId(), e.when().day(), e.when().minuteOfDay(), e.why()};
    }
    return new Object[] {event.subject().id(), event.when().day(), event.when().minuteOfDay()};
  }

  private static Object[] report(
      String source, String number, String assemblyId, Moment when, Object phase, Visit visit) {
    Object sequence = visit == null ? null : visit.sequence();
    return number != null
        ? new Object[] {source, number, phase, sequence}
        : new Object[] {"", assemblyId, when.day(), phase, sequence};
  }

  private static UUID uuid5(String name) {
    MessageDigest sha1 = SHA_1.get();
    sha1.update(NAME_SPACE_BYTES);
    ByteBuffer hash = ByteBuffer.wrap(sha1.digest(name.getBytes(StandardCharsets.UTF_8)));
    long high = (hash.getLong() & ~0xF000L) | 0x5000L;
    long low = (hash.getLong() & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
    return new UUID(high, low);
  }

  private static MessageDigest sha1() {
    try {
      return MessageDigest.getInstance("SHA-1");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-1.", e);
    }
  }
}
