package sealspan.assembly;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import sealspan.event.AssemblyInstalled;
import sealspan.event.AssemblyInstalled.DayMeaning;
import sealspan.event.AssemblyType;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.LoggedEvent;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.Subject;

/**
 * The history of one assembly, folded from its events. The fold is pure: it depends on the set of
 * events alone, not on their order or repetition.
 *
 * @param assemblyId the assembly
 * @param events its own events that hold, in canonical order
 * @param rounds its test rounds, in canonical order
 * @param exposures its exposures, those of the whole assembly first, then by component and day
 * @param seals its seals, by component and number
 * @param repairs its repair actions, in canonical order
 * @param findings what was noticed, in order of day
 * @param duplicatesIgnored copies of its events that the log took in again unchanged
 * @param installation what its last installation tells; null without one
 * @param type its type; null where not recorded
 * @param sizeInch nominal size as entered; null where not recorded
 * @param place its place as last known
 * @param installedOn day on which it was installed new; null where unknown
 * @param recordBegins first day of its record; null without events
 * @param service whether it is in place and in service
 * @param lastRecordedAt when the log took in the newest event that holds; null before
 * @param failureClasses class of the failure of each round that failed on performance, by event id
 */
public record AssemblyHistory(
    String assemblyId,
    List<StandingEvent> events,
    List<TestRound> rounds,
    List<TestExposure> exposures,
    List<SealInterval> seals,
    List<RepairOutcome> repairs,
    List<Finding> findings,
    int duplicatesIgnored,
    AssemblyInstalled installation,
    AssemblyType type,
    String sizeInch,
    Place place,
    LocalDate installedOn,
    LocalDate recordBegins,
    ServiceStatus service,
    Instant lastRecordedAt,
    Map<String, FailureClass> failureClasses) {

  /** The assembly as a whole, as a component of exposures. */
  public static final ComponentAt WHOLE = ComponentAt.main(Component.WHOLE);

  /**
   * Folds a history.
   *
   * @param assemblyId the assembly
   * @param events its own events and those of the subjects it refers to, in any order, with any
   *     repetition; events of other assemblies are passed over
   * @param criteria the limits in force
   */
  public static AssemblyHistory of(
      String assemblyId, Collection<LoggedEvent> events, AcceptanceCriteria criteria) {
    Subject subject = Subject.assembly(assemblyId);
    EventResolution resolved = EventResolution.of(events);
    List<StandingEvent> own = new ArrayList<>(resolved.standing().size());
    List<StandingEvent> others = new ArrayList<>();
    for (StandingEvent event : resolved.standing()) {
      (event.event().subject().equals(subject) ? own : others).add(event);
    }
    List<StandingEvent> ordered = EventOrder.of(own);
    AssemblyContext context = new AssemblyContext(ordered, others);
    List<HistoryStep> steps = RoundFold.of(ordered, context, criteria);
    LocalDate recordBegins = recordBegins(ordered, context);
    LocalDate installedOn = context.firstInstalledOn();
    List<ComponentAt> parts = parts(context, steps);
    AssemblyInstalled installation = context.installation(LocalDate.MAX);
    return new AssemblyHistory(
        assemblyId,
        ordered,
        rounds(steps),
        exposures(parts, steps),
        seals(parts, steps, installedOn, recordBegins),
        repairs(steps),
        Findings.of(subject, resolved, steps, context, criteria),
        resolved.duplicates().getOrDefault(subject, 0),
        installation,
        context.type(LocalDate.MAX),
        context.sizeInch(LocalDate.MAX),
        context.place(LocalDate.MAX),
        installedOn,
        recordBegins,
        ServiceStatus.of(ordered),
        lastRecordedAt(ordered),
        failureClasses(steps));
  }

  /** The class of a failed round; null for a round that did not fail on performance. */
  public FailureClass failureClass(TestRound round) {
    return failureClasses.get(round.source().id());
  }

  private static LocalDate recordBegins(List<StandingEvent> ordered, AssemblyContext context) {
    for (AssemblyInstalled installed : context.installations()) {
      if (installed.dayMeaning() == DayMeaning.RECORD_BEGINS) {
        return installed.when().day();
      }
    }
    LocalDate installedOn = context.firstInstalledOn();
    if (installedOn != null) {
      return installedOn;
    }
    return ordered.isEmpty() ? null : ordered.get(0).event().when().day();
  }

  /** The tested components: those of the type, or where it is not recorded those seen. */
  private static List<ComponentAt> parts(AssemblyContext context, List<HistoryStep> steps) {
    AssemblyType type = context.type(LocalDate.MAX);
    if (type != null) {
      return AssemblyParts.tested(type, context.mainlines(LocalDate.MAX));
    }
    TreeSet<ComponentAt> seen = new TreeSet<>();
    for (HistoryStep step : steps) {
      if (step.round() != null) {
        step.round().verdict().components().forEach(component -> seen.add(component.at()));
      } else if (step.event() instanceof RepairPerformed repair) {
        for (RepairItem item : repair.items()) {
          if (AssemblyParts.isTested(item.at().component())) {
            seen.add(item.at());
          }
        }
      }
    }
    return List.copyOf(seen);
  }

  private static List<TestRound> rounds(List<HistoryStep> steps) {
    List<TestRound> rounds = new ArrayList<>(steps.size());
    for (HistoryStep step : steps) {
      if (step.round() != null) {
        rounds.add(step.round());
      }
    }
    return rounds;
  }

  private static Map<String, FailureClass> failureClasses(List<HistoryStep> steps) {
    Map<String, FailureClass> classes = new HashMap<>();
    for (int i = 0; i < steps.size(); i++) {
      TestRound round = steps.get(i).round();
      if (round != null && round.verdict().performance() == Result.FAILED) {
        classes.put(round.source().id(), FailureClassification.of(WHOLE, steps, i));
      }
    }
    return classes;
  }

  private static List<TestExposure> exposures(List<ComponentAt> parts, List<HistoryStep> steps) {
    List<TestExposure> exposures = new ArrayList<>();
    exposures.addAll(ExposureFold.of(WHOLE, steps));
    for (ComponentAt part : parts) {
      exposures.addAll(ExposureFold.of(part, steps));
    }
    return exposures;
  }

  private static List<SealInterval> seals(
      List<ComponentAt> parts,
      List<HistoryStep> steps,
      LocalDate installedOn,
      LocalDate recordBegins) {
    List<SealInterval> seals = new ArrayList<>();
    if (recordBegins != null) {
      for (ComponentAt part : parts) {
        seals.addAll(SealFold.of(part, steps, installedOn, recordBegins));
      }
    }
    return seals;
  }

  private static List<RepairOutcome> repairs(List<HistoryStep> steps) {
    List<RepairOutcome> repairs = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).event() instanceof RepairPerformed) {
        repairs.addAll(RepairOutcome.of(steps, i));
      }
    }
    return repairs;
  }

  private static Instant lastRecordedAt(List<StandingEvent> events) {
    Instant last = null;
    for (StandingEvent event : events) {
      Instant at = event.recordedAt();
      if (at != null && (last == null || at.isAfter(last))) {
        last = at;
      }
    }
    return last;
  }
}
