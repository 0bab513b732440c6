package sealspan.ingest.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.assembly.AssemblyParts;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.ingest.validate.Columns;

/**
 * The questions that one visit is asked from the terminal, one after the other: which comes next
 * depends on the answers so far alone.
 */
public final class VisitQuestions {
  /**
   * A question.
   *
   * @param column column that the answer belongs to
   * @param words the question
   * @param needed whether it has to be answered
   */
  public record Question(String column, String words, Need needed) {}

  /** Whether a question has to be answered. */
  public enum Need {
    /** Without an answer there is no visit. */
    NEEDED,
    /** An empty answer is not recorded. */
    OPTIONAL
  }

  /** Columns that steer the questions and belong to no table. */
  public static final String WAS_REPAIRED = "was anything repaired";

  private final AssemblyType type;
  private final int mainlines;

  /**
   * The questions for an assembly.
   *
   * @param type its type
   * @param mainlines mainlines in parallel inside it, from 1
   */
  public VisitQuestions(AssemblyType type, int mainlines) {
    this.type = type;
    this.mainlines = mainlines;
  }

  /**
   * The next question; null where all are answered.
   *
   * @param answers answers so far by column, empty ones too
   */
  public Question next(Map<String, String> answers) {
    for (Question question : all(answers)) {
      if (!answers.containsKey(question.column())) {
        return question;
      }
    }
    return null;
  }

  private List<Question> all(Map<String, String> answers) {
    List<Question> questions = new ArrayList<>();
    add(questions, "assembly_id", "Assembly", Need.NEEDED);
    add(questions, "date", "Day of the visit, such as 2025-04-17", Need.NEEDED);
    add(questions, "visit_start", "Time at which the visit began", Need.OPTIONAL);
    add(questions, "found_purpose", "Reason of the test, such as routine", Need.OPTIONAL);
    add(questions, "tester_id", "Tester", Need.OPTIONAL);
    add(questions, "gauge_id", "Gauge", Need.OPTIONAL);
    add(questions, "gauge_calibrated_on", "Day of its last calibration", Need.OPTIONAL);
    add(questions, "line_pressure_psi", "Line pressure, psi", Need.OPTIONAL);
    round(questions, "found", "As found");
    add(questions, WAS_REPAIRED, "Was anything repaired? yes or no", Need.NEEDED);
    if (answers.getOrDefault(WAS_REPAIRED, "").trim().toLowerCase(Locale.ROOT).startsWith("y")) {
      for (ComponentAt part : AssemblyParts.tested(type, mainlines)) {
        repair(questions, part, answers);
      }
      round(questions, "left", "As left");
    }
    add(questions, "signed", "Signed by the tester? yes or no", Need.OPTIONAL);
    add(questions, "remarks", "Remarks (no personal data)", Need.OPTIONAL);
    return questions;
  }

  private void round(List<Question> questions, String block, String round) {
    for (ComponentAt part : AssemblyParts.tested(type, mainlines)) {
      String column = line(part) + block + "_" + readingColumn(part);
      String words = round + ", " + words(part) + ": " + readingWords(part);
      add(questions, column, words, Need.OPTIONAL);
      if (part.component() == Component.CHECK2 && isReducedPressure(part)) {
        add(
            questions,
            line(part) + block + "_check2_backpressure",
            round + ", " + words(part) + " against backpressure: closed tight or leaked",
            Need.OPTIONAL);
      }
    }
    add(
        questions,
        block + "_downstream_shutoff",
        round + ", downstream shutoff: tight or leaked",
        Need.OPTIONAL);
    add(questions, block + "_verdict", round + ", verdict: passed or failed", Need.OPTIONAL);
  }

  private void repair(List<Question> questions, ComponentAt part, Map<String, String> answers) {
    String stem = line(part) + "repair_" + Columns.partNames().get(part.component()) + "_";
    String of = "Repair of " + words(part);
    add(
        questions,
        stem + "action",
        of + ": what was done, such as cleaned + disc_replaced; empty: nothing",
        Need.OPTIONAL);
    if (!answers.getOrDefault(stem + "action", "").isBlank()) {
      add(questions, stem + "mode", of + ": what the test saw, such as leaked", Need.OPTIONAL);
      add(
          questions,
          stem + "mechanism",
          of + ": what was found, such as debris or seal_worn",
          Need.OPTIONAL);
      add(questions, stem + "cause", of + ": cause, such as main_break", Need.OPTIONAL);
      add(
          questions,
          stem + "reason",
          of + ": why a seal was replaced: failed, while_open, scheduled or damaged_in_work",
          Need.OPTIONAL);
      add(questions, stem + "kit", of + ": kit or part number", Need.OPTIONAL);
    }
  }

  private static void add(List<Question> questions, String column, String words, Need need) {
    questions.add(new Question(column, words, need));
  }

  private static String line(ComponentAt part) {
    if (part.line() == ComponentAt.Line.BYPASS) {
      return "bypass_";
    }
    return part.lineNumber() == 1 ? "" : "main" + part.lineNumber() + "_";
  }

  private static String words(ComponentAt part) {
    return part.text().replace('_', ' ').replace('.', ' ');
  }

  private boolean isReducedPressure(ComponentAt part) {
    ComponentAt relief = new ComponentAt(part.line(), part.lineNumber(), Component.RELIEF_VALVE);
    return AssemblyParts.has(type, mainlines, relief);
  }

  private String readingColumn(ComponentAt part) {
    return switch (part.component()) {
      case CHECK1 -> isReducedPressure(part) ? "check1_static_psid" : "check1_flow_psid";
      case CHECK2 -> "check2_psid";
      case RELIEF_VALVE -> "relief_psid";
      case AIR_INLET -> "air_inlet_psid";
      default -> throw new IllegalStateException("No field test reads " + part.text());
    };
  }

  private static String readingWords(ComponentAt part) {
    return switch (part.component()) {
      case RELIEF_VALVE, AIR_INLET -> "opened at, psid; or: did not open, not tested";
      default -> "psid; or: closed tight, leaked, not tested";
    };
  }
}
