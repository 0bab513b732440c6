package sealspan.study;

import java.util.List;

/** What may go with higher rates; the order is that of {@link RatedTest#levels}. */
enum RateFactor {
  TYPE,
  SIZE,
  ZONE,
  AGE;

  static final String NOT_RECORDED = "not recorded";
  static final List<String> NOTHING_RECORDED =
      List.of(NOT_RECORDED, NOT_RECORDED, NOT_RECORDED, NOT_RECORDED);

  /** Its name in tables. */
  String text() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
