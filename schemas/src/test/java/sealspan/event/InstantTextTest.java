package sealspan.event;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held equal to the parser of the JDK, which is the outside reference. */
class InstantTextTest {
  @Test
  void readsAndWritesWhatAnInstantWrites() {
    SplittableRandom random = new SplittableRandom(20261128);
    for (int i = 0; i < 20_000; i++) {
      int nanos =
          switch (i % 4) {
            case 0 -> 0;
            case 1 -> 1_000_000 * random.nextInt(1_000);
            case 2 -> 1_000 * random.nextInt(1_000_000);
            default -> random.nextInt(1_000_000_000);
          };
      Instant instant =
          Instant.ofEpochSecond(random.nextLong(-80_000_000_000L, 300_000_000_000L), nanos);
      assertEquals(instant, InstantText.parse(instant.toString()));
      assertEquals(instant.toString(), InstantText.of(instant));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2024-02-29T23:59:59Z",
        "2024-02-29T24:00:00Z",
        "2016-12-31T23:59:60Z",
        "2024-02-29T10:00:00.5Z",
        "2024-02-29T10:00:00.Z",
        "2024-02-29t10:00:00z",
        "2024-02-29T10:00:00+02:00",
        "+12024-02-29T10:00:00Z",
        "-0004-02-29T10:00:00Z"
      })
  void readsEveryOtherFormAsTheJdkDoes(String text) {
    assertEquals(Instant.parse(text), InstantText.parse(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Z",
        "2024-02-29T10:00Z",
        "2023-02-29T10:00:00Z",
        "2024-13-01T10:00:00Z",
        "2024-02-29T25:00:00Z",
        "2024-02-29T10:60:00Z",
        "2024-02-29T10:00:00",
        "2024-02-29T10:00:00.1234567890Z",
        "2024-02-29T10:00:00.12x4Z",
        "2024-02-29 10:00:00Z",
        "\u0662024-02-29T10:00:00Z"
      })
  void refusesWhatIsNoInstantAsTheJdkDoes(String text) {
    assertThrows(DateTimeParseException.class, () -> Instant.parse(text));
    assertThrows(DateTimeParseException.class, () -> InstantText.parse(text));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0000-01-01T00:00:00Z",
        "9999-12-31T23:59:59Z",
        "+10000-01-01T00:00:00Z",
        "-0001-12-31T23:59:59Z",
        "1969-12-31T23:59:59Z",
        "2024-02-29T00:00:00.250Z"
      })
  void writesTheEndsOfItsRangeAsTheJdkDoes(String text) {
    assertEquals(text, InstantText.of(Instant.parse(text)));
  }
}
