package sealspan.study.practice;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;

/**
 * One component of a type, and what a test reads there. The limits are those of the forms in use
 * (5.0 and 2.0 psi for check 1 and relief valve of a reduced pressure assembly, with a buffer of
 * 3.0; 1.0 psi elsewhere); the levels of new seals are guesses for practice.
 *
 * @param at the component
 * @param kind which true life its seal has
 * @param measure what is read
 * @param limitTenths smallest reading that passes, tenths of a psi; 0 where only tightness is seen
 * @param newLevelPsi mean true value of a new seal
 * @param range drift and spread relative to those of a check in the direction of flow
 */
record PartPlan(
    ComponentAt at,
    SealKind kind,
    Measure measure,
    int limitTenths,
    double newLevelPsi,
    double range) {

  /** Smallest buffer between check 1 and relief valve, tenths of a psi. */
  static final int BUFFER_TENTHS = 30;

  private static final Map<AssemblyType, List<PartPlan>> PLANS = plans();

  /** The components of a type in the order in which they are tested; empty where none is. */
  static List<PartPlan> of(AssemblyType type) {
    return PLANS.getOrDefault(type, List.of());
  }

  /** Whether a number is read, rather than tight or leaking. */
  boolean isMeasured() {
    return limitTenths > 0;
  }

  private static Map<AssemblyType, List<PartPlan>> plans() {
    Map<AssemblyType, List<PartPlan>> plans = new EnumMap<>(AssemblyType.class);
    ComponentAt.Line main = ComponentAt.Line.MAIN;
    ComponentAt.Line bypass = ComponentAt.Line.BYPASS;
    plans.put(AssemblyType.DC, doubleCheck(main));
    plans.put(AssemblyType.RP, reducedPressure(main));
    plans.put(AssemblyType.DCDA, joined(doubleCheck(main), doubleCheck(bypass)));
    plans.put(AssemblyType.DCDA_II, joined(doubleCheck(main), List.of(firstCheck(bypass))));
    plans.put(AssemblyType.RPDA, joined(reducedPressure(main), reducedPressure(bypass)));
    plans.put(AssemblyType.RPDA_II, joined(reducedPressure(main), List.of(firstCheck(bypass))));
    plans.put(
        AssemblyType.PVB,
        List.of(
            new PartPlan(
                new ComponentAt(main, 1, Component.AIR_INLET),
                SealKind.AIR_INLET,
                Measure.OPENING_POINT,
                10,
                2.0,
                0.8),
            firstCheck(main)));
    plans.put(
        AssemblyType.SVB,
        List.of(plans.get(AssemblyType.PVB).get(1), plans.get(AssemblyType.PVB).get(0)));
    return plans;
  }

  private static PartPlan firstCheck(ComponentAt.Line line) {
    return doubleCheck(line).get(0);
  }

  private static List<PartPlan> doubleCheck(ComponentAt.Line line) {
    List<PartPlan> checks = new ArrayList<>();
    for (Component component : List.of(Component.CHECK1, Component.CHECK2)) {
      ComponentAt at = new ComponentAt(line, 1, component);
      checks.add(new PartPlan(at, SealKind.CHECK, Measure.DIRECTION_OF_FLOW, 10, 1.9, 1));
    }
    return checks;
  }

  private static List<PartPlan> reducedPressure(ComponentAt.Line line) {
    return List.of(
        new PartPlan(
            new ComponentAt(line, 1, Component.RELIEF_VALVE),
            SealKind.RELIEF,
            Measure.OPENING_POINT,
            20,
            2.6,
            0.6),
        new PartPlan(
            new ComponentAt(line, 1, Component.CHECK2),
            SealKind.CHECK,
            Measure.BACKPRESSURE_TIGHTNESS,
            0,
            0,
            0),
        new PartPlan(
            new ComponentAt(line, 1, Component.CHECK1),
            SealKind.CHECK,
            Measure.STATIC_DROP,
            50,
            8.2,
            2.2));
  }

  private static List<PartPlan> joined(List<PartPlan> main, List<PartPlan> bypass) {
    List<PartPlan> all = new ArrayList<>(main);
    all.addAll(bypass);
    return List.copyOf(all);
  }
}
