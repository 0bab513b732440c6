package sealspan.study.watch;

import java.util.Locale;
import sealspan.table.WatchAlarmRow;

/**
 * An alarm as it is entered in the ledger, and its closing: texts of one line with fields parted by
 * tabs. What was written once must be readable for ever, so the first field names the form. The
 * question {@code alarms} reads them by the places of the fields.
 */
public final class RaisedAlarm {
  /** The kind of ledger entry that holds an alarm. */
  public static final String KIND = "ALARM_RAISED";

  /** The kind of ledger entry that closes one, by whoever entered it. */
  public static final String CLOSED_KIND = "ALARM_CLOSED";

  private static final String FORM = "alarm 1";
  private static final String CLOSED_FORM = "alarm closed 1";

  private RaisedAlarm() {}

  /** The content of the entry of an alarm. */
  public static String content(WatchAlarmRow a) {
    return line(
        FORM,
        a.alarmId(),
        a.run(),
        a.raisedAt(),
        a.raisedByEventId(),
        a.modelId(),
        a.zone(),
        a.members(),
        a.multiplier(),
        a.sinceDay(),
        a.tests(),
        a.cases(),
        number(a.expected()),
        a.caseEventIds(),
        number(a.share()),
        number(a.threshold()),
        number(a.yearsToFalseAlarm()),
        a.calibrationTests(),
        a.calibrationCases(),
        number(a.calibrationExpected()),
        a.promise(),
        a.promiseWords());
  }

  /**
   * The content of the entry that closes an alarm.
   *
   * @param alarmId its id
   * @param why why, in words
   */
  public static String closed(String alarmId, String why) {
    return line(CLOSED_FORM, alarmId, why);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.4f", value);
  }

  private static String line(Object... fields) {
    StringBuilder line = new StringBuilder();
    for (Object field : fields) {
      line.append(line.length() == 0 ? "" : "\t");
      line.append(field == null ? "" : field.toString().replaceAll("\\s+", " "));
    }
    return line.toString();
  }
}
