package sealspan.event;

import java.util.Locale;

/**
 * A component and the line that it sits in. A detector assembly has a mainline and a bypass, each
 * with components of its own; several mainlines may stand in parallel.
 *
 * @param line mainline or bypass
 * @param lineNumber number of the mainline, from 1; 1 for a bypass
 * @param component which component
 */
public record ComponentAt(
    @Means("mainline or bypass") Line line,
    @Means("number of the mainline, from 1; 1 for a bypass") int lineNumber,
    @Means("which component") Component component)
    implements Comparable<ComponentAt> {

  /** The lines of an assembly. */
  public enum Line {
    MAIN,
    BYPASS
  }

  public ComponentAt {
    if (line == null || component == null || lineNumber < 1) {
      throw new IllegalArgumentException(
          "A component needs its line, the number of the line from 1, and its name.");
    }
  }

  /** A component of the only mainline. */
  public static ComponentAt main(Component component) {
    return new ComponentAt(Line.MAIN, 1, component);
  }

  /** A component of the bypass. */
  public static ComponentAt bypass(Component component) {
    return new ComponentAt(Line.BYPASS, 1, component);
  }

  /** Text form: {@code check1}, {@code bypass.check1}, {@code main2.check1}. */
  public String text() {
    String name = component.name().toLowerCase(Locale.ROOT);
    if (line == Line.BYPASS) {
      return "bypass." + name;
    }
    return lineNumber == 1 ? name : "main" + lineNumber + "." + name;
  }

  /** Reads {@link #text()} back; fails with IllegalArgumentException on anything else. */
  public static ComponentAt ofText(String text) {
    int dot = text.indexOf('.');
    Component component = Component.valueOf(text.substring(dot + 1).toUpperCase(Locale.ROOT));
    if (dot < 0) {
      return main(component);
    }
    String line = text.substring(0, dot).toLowerCase(Locale.ROOT);
    if (line.equals("bypass")) {
      return bypass(component);
    }
    if (line.matches("main[1-9]")) {
      return new ComponentAt(Line.MAIN, line.charAt(4) - '0', component);
    }
    throw new IllegalArgumentException("Not a line of an assembly: " + line);
  }

  @Override
  public int compareTo(ComponentAt other) {
    int byLine = line.compareTo(other.line);
    int byNumber = Integer.compare(lineNumber, other.lineNumber);
    return byLine != 0 ? byLine : byNumber != 0 ? byNumber : component.compareTo(other.component);
  }
}
