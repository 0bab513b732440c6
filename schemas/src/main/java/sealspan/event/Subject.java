package sealspan.event;

import java.util.Locale;

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
    TESTER;

    /** How keys of this kind begin. */
    private final String prefix = name().toLowerCase(Locale.ROOT) + "/";
  }

  private static final Kind[] KINDS = Kind.values();

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
    return kind.prefix + id;
  }

  /** Reads {@link #key()} back. */
  public static Subject ofKey(String key) {
    Kind kind = kindOfKey(key);
    return new Subject(kind, key.substring(kind.prefix.length()));
  }

  /** The kind of the subject with a {@link #key()}. */
  public static Kind kindOfKey(String key) {
    for (Kind kind : KINDS) {
      if (key.regionMatches(true, 0, kind.prefix, 0, kind.prefix.length())) {
        return kind;
      }
    }
    throw new IllegalArgumentException("A subject key reads kind/id, this is: " + key);
  }
}
