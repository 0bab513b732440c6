package sealspan.ingest.validate;

import java.util.Collection;

/** Finds what somebody may have meant to write. */
public final class NearMiss {
  private NearMiss() {}

  /**
   * The word nearest to a text by edits (a letter put in, left out, changed); null where none is
   * within a third of the text's length.
   */
  public static String nearest(String text, Collection<String> words) {
    String nearest = null;
    int fewest = Math.max(1, text.length() / 3) + 1;
    for (String word : words) {
      int edits = Math.abs(word.length() - text.length()) >= fewest ? fewest : edits(text, word);
      if (edits < fewest) {
        fewest = edits;
        nearest = word;
      }
    }
    return nearest;
  }

  private static int edits(String a, String b) {
    int[] above = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(change, Math.min(above[j], row[j - 1]) + 1);
      }
      above = row;
    }
    return above[b.length()];
  }
}
