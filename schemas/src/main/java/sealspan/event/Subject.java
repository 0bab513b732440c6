package sealspan.event;

/**
 * What an event is about.
 *
 * @param kind what sort of thing
 * @param id the id of the thing in its source, not blank
 */
public record Subject(
    @Means("what sort of thing") Kind kind, @Means("its id, not blank") String id) {

  /** The sorts of things that events are about. */
  public enum Kind {
    ASSEMBLY,
    SITE,
    ZONE,
    GAUGE,
    TESTER
  }

  public Subject {
    if (kind == null || id == null || id.isBlank()) {
      throw new IllegalArgumentException("A subject needs a kind and an id that is not blank.");
    }
  }

  public static Subject assembly(String id) {
    return new Subject(Kind.ASSEMBLY, id);
  }

  public static Subject site(String id) {
    return new Subject(Kind.SITE, id);
  }

  public static Subject zone(String id) {
    return new Subject(Kind.ZONE, id);
  }

  public static Subject gauge(String id) {
    return new Subject(Kind.GAUGE, id);
  }

  public static Subject tester(String id) {
    return new Subject(Kind.TESTER, id);
  }

  /** The text form {@code kind/id}, used as record key and as CloudEvents subject. */
  public String key() {
    return kind.name().toLowerCase(java.util.Locale.ROOT) + "/" + id;
  }

  /** Reads {@link #key()} back. */
  public static Subject ofKey(String key) {
    int slash = key.indexOf('/');
    if (slash < 1) {
      throw new IllegalArgumentException("A subject key reads kind/id, this is: " + key);
    }
    return new Subject(
        Kind.valueOf(key.substring(0, slash).toUpperCase(java.util.Locale.ROOT)),
        key.substring(slash + 1));
  }
}
