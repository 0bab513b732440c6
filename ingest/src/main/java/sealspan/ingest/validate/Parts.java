package sealspan.ingest.validate;

import sealspan.event.Component;
import sealspan.event.ComponentAt;

/** Names of parts in cells, such as {@code check1}, {@code bypass.check1}, {@code main2.relief}. */
final class Parts {
  private Parts() {}

  /** The part of a name; null where there is none. */
  static ComponentAt parse(String text) {
    String name = CodeList.plain(text);
    ComponentAt.Line line = ComponentAt.Line.MAIN;
    int number = 1;
    if (name.startsWith("bypass_") && Columns.part(name) == null) {
      line = ComponentAt.Line.BYPASS;
      name = name.substring(7);
    } else if (name.length() > 6
        && name.startsWith("main")
        && Character.isDigit(name.charAt(4))
        && name.charAt(4) != '0'
        && name.charAt(5) == '_') {
      number = name.charAt(4) - '0';
      name = name.substring(6);
    }
    Component component = Columns.part(name);
    return component == null ? null : new ComponentAt(line, number, component);
  }
}
