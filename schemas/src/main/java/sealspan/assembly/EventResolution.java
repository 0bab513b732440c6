package sealspan.assembly;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;

/**
 * Which events hold. Of events with one id and one content the earliest recorded counts and the
 * others are duplicates; with other content they conflict, and the earliest recorded holds until a
 * correction settles it. The last recorded correction of an event holds. A void takes back an event
 * with all its corrections, or one correction, or another void; voids that take back one another in
 * a circle take back nothing.
 *
 * <p>What is taken back leaves no trace here, so that a history with an event and its void equals
 * the history without either; the log keeps both.
 *
 * @param standing the events that hold, in no particular order
 * @param duplicates by subject, copies that the log took in again with the same content
 * @param conflicts events that another content under the same id keeps out
 * @param targetless corrections and voids whose target is not in the history
 */
record EventResolution(
    List<StandingEvent> standing,
    Map<Subject, Integer> duplicates,
    List<Conflict> conflicts,
    List<LoggedEvent> targetless) {

  /** Two contents under one id. */
  record Conflict(LoggedEvent holds, LoggedEvent keptOut) {}

  private static final Comparator<Instant> RECORDED =
      Comparator.nullsLast(Comparator.naturalOrder());

  /** The order in which copies of one event go before each other; equal only for equal copies. */
  private static final Comparator<LoggedEvent> FIRST =
      Comparator.comparing(LoggedEvent::recordedAt, RECORDED)
          .thenComparing((a, b) -> a.event().equals(b.event()) ? 0 : text(a).compareTo(text(b)))
          .thenComparing(LoggedEvent::source)
          .thenComparing(LoggedEvent::reportedAt, RECORDED)
          .thenComparing(
              LoggedEvent::reportedOrigin, Comparator.nullsLast(Comparator.naturalOrder()))
          .thenComparing(LoggedEvent::arrival, Comparator.nullsLast(Comparator.naturalOrder()));

  private static final Comparator<LoggedEvent> LAST_RECORDED =
      Comparator.comparing(LoggedEvent::recordedAt, RECORDED).thenComparing(LoggedEvent::id);

  private static String text(LoggedEvent event) {
    return event.event().toString();
  }

  /** Resolves events in any order, with any repetition. */
  static EventResolution of(Collection<LoggedEvent> events) {
    Map<String, LoggedEvent> first = new HashMap<>(events.size() * 2);
    List<LoggedEvent> others = new ArrayList<>(0);
    List<LoggedEvent> amendments = new ArrayList<>(0);
    for (LoggedEvent event : events) {
      LoggedEvent known = first.putIfAbsent(event.id(), event);
      if (known != null && !known.equals(event)) {
        others.add(event);
        if (FIRST.compare(event, known) < 0) {
          first.put(event.id(), event);
          others.set(others.size() - 1, known);
        }
      }
    }
    for (LoggedEvent event : first.values()) {
      if (event.event() instanceof EventCorrected || event.event() instanceof EventVoided) {
        amendments.add(event);
      }
    }
    Amendments amended = amendments.isEmpty() ? Amendments.NONE : Amendments.of(amendments, first);
    List<StandingEvent> standing = new ArrayList<>(first.size());
    for (LoggedEvent event : first.values()) {
      if (!(event.event() instanceof EventCorrected)
          && !(event.event() instanceof EventVoided)
          && !amended.fallen().contains(event.id())) {
        LoggedEvent correction = amended.corrections().get(event.id());
        AssemblyEvent holds =
            correction == null
                ? event.event()
                : ((EventCorrected) correction.event()).replacement();
        standing.add(new StandingEvent(event, holds, correction));
      }
    }
    Map<Subject, Integer> duplicates = new HashMap<>();
    List<Conflict> conflicts = new ArrayList<>(0);
    for (LoggedEvent other : new HashSet<>(others)) {
      LoggedEvent holds = first.get(other.id());
      if (other.equals(holds) || amended.fallen().contains(other.id())) {
        continue;
      }
      if (other.event().equals(holds.event())) {
        duplicates.merge(other.event().subject(), 1, Integer::sum);
      } else if (!amended.corrections().containsKey(other.id())) {
        conflicts.add(new Conflict(holds, other));
      }
    }
    return new EventResolution(standing, duplicates, conflicts, amended.targetless());
  }

  /** What corrections and voids do. */
  private record Amendments(
      Set<String> fallen, Map<String, LoggedEvent> corrections, List<LoggedEvent> targetless) {
    static final Amendments NONE = new Amendments(Set.of(), Map.of(), List.of());

    static Amendments of(List<LoggedEvent> amendments, Map<String, LoggedEvent> byId) {
      List<LoggedEvent> targetless = new ArrayList<>(0);
      Map<String, List<String>> voidsOf = new HashMap<>();
      for (LoggedEvent amendment : amendments) {
        if (amendment.event() instanceof EventVoided voiding) {
          voidsOf
              .computeIfAbsent(voiding.targetEventId(), id -> new ArrayList<>())
              .add(amendment.id());
        }
        if (!byId.containsKey(target(amendment))) {
          targetless.add(amendment);
        }
      }
      Set<String> fallen = fallen(voidsOf);
      targetless.removeIf(amendment -> fallen.contains(amendment.id()));
      Map<String, LoggedEvent> corrections = new HashMap<>();
      for (LoggedEvent amendment : amendments) {
        if (amendment.event() instanceof EventCorrected && !fallen.contains(amendment.id())) {
          String root = root(amendment, byId, fallen);
          if (root != null) {
            corrections.merge(root, amendment, (a, b) -> LAST_RECORDED.compare(a, b) >= 0 ? a : b);
          }
        }
      }
      return new Amendments(fallen, corrections, targetless);
    }

    private static String target(LoggedEvent amendment) {
      return amendment.event() instanceof EventVoided voiding
          ? voiding.targetEventId()
          : ((EventCorrected) amendment.event()).targetEventId();
    }

    /** The plain event at the end of a chain of corrections; null where the chain is broken. */
    private static String root(
        LoggedEvent correction, Map<String, LoggedEvent> byId, Set<String> fallen) {
      LoggedEvent at = correction;
      for (int step = 0; step <= byId.size(); step++) {
        LoggedEvent target = byId.get(target(at));
        if (target == null || fallen.contains(target.id())) {
          return null;
        }
        if (target.event() instanceof EventVoided) {
          return null;
        }
        if (!(target.event() instanceof EventCorrected)) {
          return target.id();
        }
        at = target;
      }
      return null;
    }

    /**
     * The ids that a standing void takes back. A void stands once every void of it has fallen;
     * those left over stand in a circle.
     */
    private static Set<String> fallen(Map<String, List<String>> voidsOf) {
      Set<String> fallen = new HashSet<>();
      Set<String> standing = new HashSet<>();
      Map<String, String> targetOf = new HashMap<>();
      voidsOf.forEach((target, voids) -> voids.forEach(id -> targetOf.put(id, target)));
      boolean changed = true;
      while (changed) {
        changed = false;
        for (Map.Entry<String, String> voiding : targetOf.entrySet()) {
          String id = voiding.getKey();
          if (!standing.contains(id)
              && !fallen.contains(id)
              && fallen.containsAll(voidsOf.getOrDefault(id, List.of()))) {
            standing.add(id);
            fallen.add(voiding.getValue());
            changed = true;
          }
        }
      }
      return fallen;
    }
  }
}
