package sealspan.study.practice;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import sealspan.event.Means;

/** The truth as lines of CSV, to be kept beside the events of a fleet. */
public final class TruthText {
  private TruthText() {}

  /** All true values: name, value, meaning; the first line is the header. */
  public static List<String> parameters(PracticeParameters parameters) {
    List<String> lines = new ArrayList<>();
    lines.add("name,value,meaning");
    add("", parameters, lines);
    return lines;
  }

  private static void add(String prefix, Record record, List<String> lines) {
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      Object value = valueOf(component, record);
      String name = prefix + component.getName();
      if (value instanceof Record inner) {
        add(name + ".", inner, lines);
      } else {
        String meaning = component.getAnnotation(Means.class).value();
        lines.add(String.join(",", quoted(name), quoted(text(value)), quoted(meaning)));
      }
    }
  }

  private static Object valueOf(RecordComponent component, Record record) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("Records of this package can be read.", e);
    }
  }

  /** The true failures of a fleet, position by position; the first line is the header. */
  public static Stream<String> failures(PracticeFleet fleet) {
    String header =
        "position,zone,assembly,component,state,failed_at_day,virtual_age_days,disturbance,"
            + "first_visit_on";
    return Stream.concat(
        Stream.of(header),
        fleet
            .truths()
            .flatMap(
                truth ->
                    truth.failures().stream()
                        .map(
                            f ->
                                line(
                                    truth,
                                    f.assemblyId(),
                                    f.component().text(),
                                    f.state(),
                                    f.failedAtDay(),
                                    f.virtualAgeDays(),
                                    f.disturbanceId(),
                                    f.firstVisitOn()))));
  }

  /** The true effects of all actions of a fleet; the first line is the header. */
  public static Stream<String> actions(PracticeFleet fleet) {
    String header =
        "position,zone,assembly,component,day,deed,state,virtual_age_before_days,"
            + "virtual_age_after_days,held,replace_probability";
    return Stream.concat(
        Stream.of(header),
        fleet
            .truths()
            .flatMap(
                truth ->
                    truth.actions().stream()
                        .map(
                            a ->
                                line(
                                    truth,
                                    a.assemblyId(),
                                    a.component().text(),
                                    a.day(),
                                    a.deed(),
                                    a.state(),
                                    a.virtualAgeBeforeDays(),
                                    a.virtualAgeAfterDays(),
                                    a.held(),
                                    a.replaceProbability()))));
  }

  private static String line(PositionTruth truth, Object... fields) {
    StringBuilder line = new StringBuilder(truth.positionId()).append(',').append(truth.zoneId());
    for (Object field : fields) {
      line.append(',').append(quoted(text(field)));
    }
    return line.toString();
  }

  private static String text(Object value) {
    return value == null ? "" : value.toString();
  }

  private static String quoted(String text) {
    return text.matches("[^\",\\r\\n]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
