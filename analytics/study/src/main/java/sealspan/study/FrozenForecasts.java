package sealspan.study;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sealspan.table.FrozenForecastRow;
import sealspan.table.TestRow;

/**
 * Holds forecasts as they were issued against what came of them. Nothing that happens later changes
 * what a forecast said; it only adds its outcome: the first counted as-found round that happened
 * after its basis and was recorded after it was issued. Of several forecasts that were issued
 * before the same outcome the last one counts.
 */
final class FrozenForecasts {
  private static final Comparator<IssuedForecast> BY_ISSUE =
      Comparator.comparing(IssuedForecast::issuedAt)
          .thenComparing(IssuedForecast::ledgerId)
          .thenComparing(IssuedForecast::basisEventId);

  private FrozenForecasts() {}

  /**
   * The rows of one assembly, in the order in which the forecasts were issued.
   *
   * @param issued its forecasts, in any order, with any repetition
   * @param tests its test rounds
   */
  static List<FrozenForecastRow> of(Collection<IssuedForecast> issued, List<TestRow> tests) {
    List<IssuedForecast> ordered = new ArrayList<>();
    Set<String> bases = new HashSet<>();
    for (IssuedForecast forecast : issued.stream().sorted(BY_ISSUE).toList()) {
      // The same basis is forecast once: what was issued again was issued by mistake.
      if (bases.add(forecast.basisEventId())) {
        ordered.add(forecast);
      }
    }
    List<FrozenForecastRow> rows = new ArrayList<>(ordered.size());
    for (int i = 0; i < ordered.size(); i++) {
      TestRow outcome = outcome(ordered.get(i), tests);
      Instant known = outcome == null ? Instant.MAX : outcome.recordedAt();
      boolean replaced = i + 1 < ordered.size() && ordered.get(i + 1).issuedAt().isBefore(known);
      rows.add(row(ordered.get(i), outcome, replaced));
    }
    return rows;
  }

  private static TestRow outcome(IssuedForecast forecast, List<TestRow> tests) {
    TestRow first = null;
    for (TestRow test : tests) {
      boolean after =
          test.counted()
              && test.day().isAfter(forecast.basisDay())
              && test.recordedAt() != null
              && test.recordedAt().isAfter(forecast.issuedAt());
      if (after && (first == null || test.day().isBefore(first.day()))) {
        first = test;
      }
    }
    return first;
  }

  private static FrozenForecastRow row(IssuedForecast forecast, TestRow outcome, boolean replaced) {
    String note = replaced ? "a later forecast took its place" : null;
    double then = Double.NaN;
    long days = 0;
    if (outcome == null) {
      note = replaced ? note : "no counted round since";
    } else {
      days = ChronoUnit.DAYS.between(forecast.basisDay(), outcome.day());
      then = replaced ? Double.NaN : forecast.probabilityAfter(days);
      note = !replaced && Double.isNaN(then) ? "tested more than 24 months after its basis" : note;
    }
    boolean scored = !Double.isNaN(then);
    return new FrozenForecastRow(
        forecast.assemblyId(),
        forecast.ledgerId(),
        forecast.issuedAt(),
        forecast.fitCutId(),
        forecast.codeVersion(),
        forecast.basisEventId(),
        forecast.basisDay(),
        forecast.atOnce(),
        forecast.after6Months(),
        forecast.after12Months(),
        forecast.after24Months(),
        forecast.base(),
        forecast.byDrift(),
        forecast.suddenly(),
        forecast.drivenBy(),
        forecast.type(),
        outcome == null ? null : outcome.eventId(),
        outcome == null ? null : outcome.day(),
        outcome == null ? null : outcome.recordedAt(),
        scored ? then : null,
        scored ? forecast.baseAfter(days) : null,
        outcome == null ? null : outcome.outcome().equals("FAILED"),
        note);
  }
}
