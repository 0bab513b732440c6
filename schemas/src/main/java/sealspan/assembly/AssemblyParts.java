package sealspan.assembly;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;

/**
 * What each type of assembly is made of. The parts that hold back or let out water (checks, relief
 * valve, air inlet) are the tested ones; each has a seal. Shutoffs, test cocks and body are parts
 * of their own and never enter the rates of checks.
 */
public final class AssemblyParts {
  private AssemblyParts() {}

  /** Whether a component is one that field tests judge, and that has a seal. */
  public static boolean isTested(Component component) {
    return switch (component) {
      case CHECK1, CHECK2, RELIEF_VALVE, AIR_INLET -> true;
      case SHUTOFF1, SHUTOFF2, TEST_COCKS, BODY, BYPASS_METER, AIR_GAP, WHOLE -> false;
    };
  }

  /** Whether a type is field tested at all; an air gap or atmospheric breaker is inspected. */
  public static boolean isTestable(AssemblyType type) {
    return type != AssemblyType.AVB && type != AssemblyType.AG;
  }

  /**
   * The tested components, mainlines first.
   *
   * @param type the type
   * @param mainlineCount mainlines in parallel inside the assembly, 1 or more
   */
  public static List<ComponentAt> tested(AssemblyType type, int mainlineCount) {
    List<ComponentAt> parts = new ArrayList<>();
    for (int line = 1; line <= mainlineCount; line++) {
      for (Component component : mainline(type)) {
        parts.add(new ComponentAt(Line.MAIN, line, component));
      }
    }
    for (Component component : bypass(type)) {
      parts.add(ComponentAt.bypass(component));
    }
    return parts;
  }

  /** Whether an assembly of the type has the component; every line has shutoffs, cocks and body. */
  public static boolean has(AssemblyType type, int mainlineCount, ComponentAt at) {
    boolean bypass = at.line() == Line.BYPASS;
    if (bypass ? bypass(type).isEmpty() : at.lineNumber() > mainlineCount) {
      return false;
    }
    return switch (at.component()) {
      case CHECK1, CHECK2, RELIEF_VALVE, AIR_INLET ->
          (bypass ? bypass(type) : mainline(type)).contains(at.component());
      case AIR_GAP -> type == AssemblyType.AG;
      case BYPASS_METER -> !bypass(type).isEmpty();
      case SHUTOFF1, SHUTOFF2, TEST_COCKS, BODY, WHOLE -> true;
    };
  }

  private static List<Component> mainline(AssemblyType type) {
    return switch (type) {
      case DC, DCDA, DCDA_II -> List.of(Component.CHECK1, Component.CHECK2);
      case RP, RPDA, RPDA_II -> List.of(Component.CHECK1, Component.CHECK2, Component.RELIEF_VALVE);
      case PVB, SVB -> List.of(Component.CHECK1, Component.AIR_INLET);
      case AVB, AG -> List.of();
    };
  }

  private static List<Component> bypass(AssemblyType type) {
    return switch (type) {
      case DCDA -> List.of(Component.CHECK1, Component.CHECK2);
      case RPDA -> List.of(Component.CHECK1, Component.CHECK2, Component.RELIEF_VALVE);
      case DCDA_II, RPDA_II -> List.of(Component.CHECK1);
      case DC, RP, PVB, SVB, AVB, AG -> List.of();
    };
  }
}
