package sealspan.answers;

/** Long lines for people, broken between words. */
public final class Wrapped {
  private static final int WIDTH = 100;

  private Wrapped() {}

  /** Appends a note; its further lines are indented by two spaces. */
  public static void append(String note, StringBuilder out) {
    StringBuilder line = new StringBuilder();
    for (String word : note.split(" ")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > WIDTH) {
        out.append(line).append('\n');
        line.setLength(0);
        line.append("  ");
      } else if (line.length() > 0) {
        line.append(' ');
      }
      line.append(word);
    }
    out.append(line).append('\n');
  }
}
