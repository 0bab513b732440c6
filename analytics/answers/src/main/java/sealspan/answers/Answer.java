package sealspan.answers;

import java.util.List;

/**
 * An answer with everything that is needed to judge it.
 *
 * @param name name of the question
 * @param title the question in words, with the filters that were given
 * @param asOf what it stands for: the cut, or the date
 * @param words the answer in words, shown first; empty where the rows are the answer
 * @param table the rows
 * @param notes n, what was left out, age of the fit, cautions: the lines beneath
 */
public record Answer(
    String name,
    String title,
    String asOf,
    List<String> words,
    ResultTable table,
    List<String> notes) {
  public Answer {
    words = List.copyOf(words);
    notes = List.copyOf(notes);
  }

  /** An answer whose rows say all. */
  public Answer(String name, String title, String asOf, ResultTable table, List<String> notes) {
    this(name, title, asOf, List.of(), table, notes);
  }
}
