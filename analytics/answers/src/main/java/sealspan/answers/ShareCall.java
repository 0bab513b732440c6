package sealspan.answers;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sealspan.study.ExactShare;

/**
 * An exact 95 % interval of a share, from two columns of counts into two columns that the SQL left
 * empty.
 *
 * @param hits column of the cases counted
 * @param cases column of all cases
 * @param lower column of the lower end
 * @param upper column of the upper end
 */
record ShareCall(String hits, String cases, String lower, String upper) implements StudyCall {
  private static final Pattern FORM =
      Pattern.compile("exact share (\\w+) of (\\w+) into (\\w+), (\\w+)");

  /** Reads the form {@code exact share failed of tests into lower, upper}. */
  static ShareCall of(String header) {
    Matcher form = FORM.matcher(header);
    if (!form.matches()) {
      throw new IllegalArgumentException("Not a study call: " + header);
    }
    return new ShareCall(form.group(1), form.group(2), form.group(3), form.group(4));
  }

  @Override
  public ResultTable applyTo(ResultTable table) {
    int hitsAt = table.indexOf(hits);
    int casesAt = table.indexOf(cases);
    int lowerAt = table.indexOf(lower);
    int upperAt = table.indexOf(upper);
    List<List<Object>> rows = new ArrayList<>();
    for (List<Object> row : table.rows()) {
      List<Object> filled = new ArrayList<>(row);
      long n = ((Number) row.get(casesAt)).longValue();
      if (n > 0) {
        ExactShare share = ExactShare.of(((Number) row.get(hitsAt)).longValue(), n);
        filled.set(lowerAt, share.lower());
        filled.set(upperAt, share.upper());
      }
      rows.add(filled);
    }
    return table.withRows(rows);
  }
}
