package sealspan.study;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sealspan.assembly.AcceptanceCriteria;
import sealspan.assembly.References;
import sealspan.event.LoggedEvent;
import sealspan.event.Subject;
import sealspan.study.fouling.FoulingTables;
import sealspan.study.watch.WatchBook;
import sealspan.study.watch.WatchedTests;
import sealspan.table.AssemblyRows;
import sealspan.table.Bundle;
import sealspan.table.FitRows;
import sealspan.table.LedgerEntry;
import sealspan.table.ZoneRows;

/**
 * All tables from a set of events at once, without a stream: what an answer as of an earlier date
 * is made from, and what the stream is held equal to, byte for byte.
 */
public final class BatchTables {
  private BatchTables() {}

  /**
   * Every bundle that the events give, ordered by key.
   *
   * @param events the events, in any order and with any repetition
   * @param fitted the events that the last fit was made from; a subset of {@code events}
   * @param criteria the limits in force
   * @param cut the cut of the last fit; null for no fit
   */
  public static List<Bundle> of(
      Collection<LoggedEvent> events,
      Collection<LoggedEvent> fitted,
      AcceptanceCriteria criteria,
      FitCut cut) {
    return of(events, fitted, criteria, cut, List.of());
  }

  /**
   * Every bundle that the events give, ordered by key, with what came of forecasts.
   *
   * @param events the events, in any order and with any repetition
   * @param fitted the events that the last fit was made from; a subset of {@code events}
   * @param criteria the limits in force
   * @param cut the cut of the last fit; null for no fit
   * @param issued the forecasts that were issued
   */
  public static List<Bundle> of(
      Collection<LoggedEvent> events,
      Collection<LoggedEvent> fitted,
      AcceptanceCriteria criteria,
      FitCut cut,
      Collection<IssuedForecast> issued) {
    return of(events, fitted, criteria, cut, issued, List.of());
  }

  /**
   * Every bundle that the events give, ordered by key, with what came of forecasts and with the
   * watch over fouling.
   *
   * @param events the events, in any order and with any repetition
   * @param fitted the events that the last fit was made from; a subset of {@code events}
   * @param criteria the limits in force
   * @param cut the cut of the last fit; null for no fit
   * @param issued the forecasts that were issued
   * @param frozen the entries of the ledger with the models that were frozen; others are passed
   *     over
   */
  public static List<Bundle> of(
      Collection<LoggedEvent> events,
      Collection<LoggedEvent> fitted,
      AcceptanceCriteria criteria,
      FitCut cut,
      Collection<IssuedForecast> issued,
      Collection<LedgerEntry> frozen) {
    Map<String, List<IssuedForecast>> forecasts = new HashMap<>();
    for (IssuedForecast forecast : issued) {
      forecasts.computeIfAbsent(forecast.assemblyId(), a -> new ArrayList<>()).add(forecast);
    }
    Map<String, Bundle> bundles = new TreeMap<>();
    LatestFits latest = LatestFits.none();
    if (cut != null) {
      Map<String, List<AssemblyRows>> members = members(fitted, criteria);
      List<FitRows> fits = new ArrayList<>();
      members.forEach((stratum, rows) -> fits.add(fit(stratum, rows, cut)));
      fits.forEach(fit -> bundles.put(fit.key(), fit));
      latest = LatestFits.of(fits);
      addFouling(members.getOrDefault(Fits.ALL, List.of()), zones(fitted), cut, bundles);
    }
    LatestFits scoring = latest;
    WatchBook watch = new WatchBook();
    watch.add(frozen);
    Map<Subject, List<LoggedEvent>> bySubject = bySubject(events);
    bySubject.forEach(
        (subject, own) -> {
          if (subject.kind() == Subject.Kind.ASSEMBLY) {
            List<LoggedEvent> history = history(own, bySubject);
            watch.put(subject.id(), WatchedTests.of(subject.id(), history, criteria));
            AssemblyRows rows =
                AssemblyTables.of(
                    subject.id(),
                    history,
                    criteria,
                    scoring,
                    forecasts.getOrDefault(subject.id(), List.of()),
                    0);
            bundles.put(rows.key(), rows);
          } else if (subject.kind() == Subject.Kind.ZONE) {
            Bundle rows = ZoneTables.of(subject.id(), own, 0);
            bundles.put(rows.key(), rows);
          }
        });
    watch.rows(0).ifPresent(rows -> bundles.put(rows.key(), rows));
    return List.copyOf(bundles.values());
  }

  /**
   * The rows of all assemblies, without fits and what rests on them, in order of their ids.
   *
   * @param events the events, in any order and with any repetition
   * @param criteria the limits in force
   */
  public static List<AssemblyRows> assemblies(
      Collection<LoggedEvent> events, AcceptanceCriteria criteria) {
    List<AssemblyRows> rows =
        new ArrayList<>(members(events, criteria).getOrDefault(Fits.ALL, List.of()));
    rows.sort(Comparator.comparing(AssemblyRows::assemblyId));
    return List.copyOf(rows);
  }

  private static FitRows fit(String stratum, List<AssemblyRows> rows, FitCut cut) {
    return Fits.of(
        stratum, Members.of(rows.stream().map(NeededRows.of(stratum)::of).toList()), cut);
  }

  private static void addFouling(
      List<AssemblyRows> assemblies,
      List<ZoneRows> zones,
      FitCut cut,
      Map<String, Bundle> bundles) {
    if (!assemblies.isEmpty() || !zones.isEmpty()) {
      Bundle fouling =
          FoulingTables.of(
              Members.of(assemblies.stream().map(FoulingTables::needed).toList()), zones, cut);
      bundles.put(fouling.key(), fouling);
    }
  }

  /** The rows of all water zones, in any order. */
  public static List<ZoneRows> zones(Collection<LoggedEvent> events) {
    List<ZoneRows> zones = new ArrayList<>();
    bySubject(events)
        .forEach(
            (subject, own) -> {
              if (subject.kind() == Subject.Kind.ZONE) {
                zones.add(ZoneTables.of(subject.id(), own, 0));
              }
            });
    return zones;
  }

  private static Map<String, List<AssemblyRows>> members(
      Collection<LoggedEvent> events, AcceptanceCriteria criteria) {
    Map<Subject, List<LoggedEvent>> bySubject = bySubject(events);
    Map<String, List<AssemblyRows>> members = new TreeMap<>();
    bySubject.forEach(
        (subject, own) -> {
          if (subject.kind() == Subject.Kind.ASSEMBLY) {
            AssemblyRows rows =
                AssemblyTables.of(
                    subject.id(), history(own, bySubject), criteria, LatestFits.none(), 0);
            for (String stratum : Fits.strataOf(rows)) {
              members.computeIfAbsent(stratum, s -> new ArrayList<>()).add(rows);
            }
          }
        });
    return members;
  }

  private static List<LoggedEvent> history(
      List<LoggedEvent> own, Map<Subject, List<LoggedEvent>> bySubject) {
    Set<String> keys = new TreeSet<>();
    for (LoggedEvent event : own) {
      for (Subject subject : References.of(event.event())) {
        keys.add(subject.key());
      }
    }
    List<LoggedEvent> history = new ArrayList<>(own);
    for (String key : keys) {
      history.addAll(bySubject.getOrDefault(Subject.ofKey(key), List.of()));
    }
    return history;
  }

  private static Map<Subject, List<LoggedEvent>> bySubject(Collection<LoggedEvent> events) {
    Map<Subject, List<LoggedEvent>> bySubject = new HashMap<>();
    for (LoggedEvent event : events) {
      bySubject.computeIfAbsent(event.event().subject(), s -> new ArrayList<>()).add(event);
    }
    return bySubject;
  }
}
