package sealspan.study;

/** Values as the tables write them; not recorded stays not recorded. */
final class Text {
  private Text() {}

  static String of(Enum<?> value) {
    return value == null ? null : value.name();
  }
}
