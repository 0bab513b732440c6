package sealspan.answers;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What an answer can be narrowed by. A question takes some of them. */
public enum Filter {
  ASSEMBLY(Kind.TEXT, "assembly id"),
  SITE(Kind.TEXT, "site id"),
  ZONE(Kind.TEXT, "water zone"),
  TYPE(Kind.TEXT, "assembly type, such as RP"),
  SIZE(Kind.TEXT, "nominal size in inches, as entered"),
  COMPONENT(Kind.TEXT, "component, such as check1 or bypass.check1"),
  FOUND(Kind.TEXT, "what was found on opening: FOULING, DAMAGE, NOTHING_FOUND or NOT_KNOWN"),
  HAZARD(Kind.TEXT, "hazard class, such as HIGH"),
  TESTER(Kind.TEXT, "tester id"),
  SOURCE(Kind.TEXT, "source of the rows"),
  CHECK(Kind.TEXT, "name of the check"),
  SINCE(Kind.DAY, "first day, by when things happened; included"),
  UNTIL(Kind.DAY, "last day, by when things happened; included"),
  YEAR(Kind.NUMBER, "calendar year"),
  NUMBER(Kind.NUMBER, "number of the cluster, as the question clusters gives it"),
  EXTRA(Kind.NUMBER, "what a new seal costs more than cleaning, in any money; a placeholder"),
  REVISIT(Kind.NUMBER, "what a failure at the next test costs, in the same money; a placeholder"),
  LIMIT(Kind.NUMBER, "rows shown at most");

  /** What the value of a filter is. */
  public enum Kind {
    TEXT("varchar"),
    DAY("date"),
    NUMBER("bigint");

    private final String sqlType;

    Kind(String sqlType) {
      this.sqlType = sqlType;
    }

    String sqlType() {
      return sqlType;
    }
  }

  private final Kind kind;
  private final String meaning;

  Filter(Kind kind, String meaning) {
    this.kind = kind;
    this.meaning = meaning;
  }

  public Kind kind() {
    return kind;
  }

  /** What the filter narrows by, in words. */
  public String meaning() {
    return meaning;
  }

  /** The name that people type, such as {@code since}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The filter of a name; fails with {@link AnswersException} that lists the names. */
  public static Filter ofLabel(String label) {
    for (Filter filter : values()) {
      if (filter.label().equals(label)) {
        return filter;
      }
    }
    throw new AnswersException(
        "There is no filter named "
            + label
            + ". Filters are "
            + Arrays.stream(values()).map(Filter::label).collect(Collectors.joining(", "))
            + ".");
  }

  /** Reads a value that was typed: a String, LocalDate or Long. */
  Object read(String typed) {
    try {
      return switch (kind) {
        case TEXT -> typed;
        case DAY -> LocalDate.parse(typed.strip());
        case NUMBER -> number(typed);
      };
    } catch (DateTimeParseException e) {
      throw new AnswersException(
          "The filter " + label() + " takes a date such as 2025-03-31, not " + typed + ".", e);
    }
  }

  private Long number(String typed) {
    String digits = typed.strip();
    if (!digits.matches("\\d{1,9}")) {
      throw new AnswersException(
          "The filter " + label() + " takes a whole number, not " + typed + ".");
    }
    return Long.valueOf(digits);
  }
}
