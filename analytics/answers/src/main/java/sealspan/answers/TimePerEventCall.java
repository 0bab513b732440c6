package sealspan.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sealspan.study.TimePerEvent;

/**
 * The time per event with its exact 95 % interval, from a column of counts and one of the time
 * watched into three columns that the SQL left empty.
 *
 * @param events column of the events counted
 * @param watched column of the time watched
 * @param perEvent column of the time per event
 * @param lower column of the lower end
 * @param upper column of the upper end
 */
record TimePerEventCall(String events, String watched, String perEvent, String lower, String upper)
    implements StudyCall {
  private static final Pattern FORM =
      Pattern.compile("time per event (\\w+) in (\\w+) into (\\w+), (\\w+), (\\w+)");

  /** Reads the form {@code time per event replaced in seal_years into years, lower, upper}. */
  static TimePerEventCall of(String header) {
    Matcher form = FORM.matcher(header);
    if (!form.matches()) {
      throw new IllegalArgumentException("Not a study call: " + header);
    }
    return new TimePerEventCall(
        form.group(1), form.group(2), form.group(3), form.group(4), form.group(5));
  }

  @Override
  public ResultTable applyTo(ResultTable table) {
    List<List<Object>> rows = new ArrayList<>();
    for (List<Object> row : table.rows()) {
      List<Object> filled = new ArrayList<>(row);
      double time = ((Number) row.get(table.indexOf(watched))).doubleValue();
      if (time > 0) {
        long n = ((Number) row.get(table.indexOf(events))).longValue();
        TimePerEvent figure = TimePerEvent.of(n, time);
        filled.set(table.indexOf(perEvent), figure.perEvent());
        filled.set(table.indexOf(lower), figure.lower());
        filled.set(table.indexOf(upper), figure.upper());
      }
      rows.add(filled);
    }
    return table.withRows(rows);
  }
}
