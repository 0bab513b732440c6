package sealspan.assembly;

import java.io.IOException;
import java.io.InputStream;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import sealspan.event.AssemblyType;
import sealspan.event.ComponentAt;
import sealspan.event.Measure;

/**
 * The dated, sourced table of limits in force, as CSV that a user may edit. No limit is a constant
 * of the program.
 *
 * <p>A site that names a jurisdiction is judged by the rows of that jurisdiction alone, never by
 * those of another; where it has none, its readings are not judged. A site that names none is
 * judged by the rows of the jurisdiction {@value #DEFAULT}.
 */
public final class AcceptanceCriteria implements Serializable {
  /** The jurisdiction whose rows hold for sites that name none. */
  public static final String DEFAULT = "default";

  private static final long serialVersionUID = 1;
  private static final String SHIPPED = "/criteria.csv";

  private final String csv;
  private final transient Map<String, Map<AssemblyType, List<Criterion>>> limits = new HashMap<>();
  private final transient Map<String, List<ProgrammeRule>> rules = new HashMap<>();

  /**
   * Reads a table.
   *
   * @param csv the table as CSV with the header of the shipped one; lines that begin with # are
   *     remarks
   * @throws CriteriaException where a row cannot be read, naming line and column
   */
  public AcceptanceCriteria(String csv) {
    this.csv = csv;
    CriteriaTable table = CriteriaTable.read(csv);
    for (Criterion row : table.limits()) {
      limits
          .computeIfAbsent(key(row.jurisdiction()), k -> new HashMap<>())
          .computeIfAbsent(row.type(), t -> new ArrayList<>())
          .add(row);
    }
    for (ProgrammeRule rule : table.rules()) {
      rules.computeIfAbsent(key(rule.jurisdiction()), k -> new ArrayList<>()).add(rule);
    }
  }

  /** The table that ships with the program. */
  public static AcceptanceCriteria shipped() {
    try (InputStream in = AcceptanceCriteria.class.getResourceAsStream(SHIPPED)) {
      if (in == null) {
        throw new IOException("The program's own file " + SHIPPED + " is missing.");
      }
      return new AcceptanceCriteria(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The table as CSV. */
  public String csv() {
    return csv;
  }

  /**
   * The limits for one round, one for each component and measure: where several rows fit, the one
   * that names method and edition goes first, then the one that begins last.
   *
   * @param jurisdiction jurisdiction of the site; null where it names none
   * @param type the assembly type
   * @param day day of the round
   * @param method test method; null where not recorded
   * @param edition edition of the procedure; null where not recorded
   */
  public List<Criterion> limits(
      String jurisdiction, AssemblyType type, LocalDate day, String method, String edition) {
    List<Criterion> chosen = new ArrayList<>(8);
    for (Criterion row :
        limits.getOrDefault(key(jurisdiction), Map.of()).getOrDefault(type, List.of())) {
      if (row.appliesOn(day) && row.fits(method, edition)) {
        choose(chosen, row);
      }
    }
    return chosen;
  }

  private static void choose(List<Criterion> chosen, Criterion row) {
    for (int i = 0; i < chosen.size(); i++) {
      Criterion other = chosen.get(i);
      if (sameReading(other, row)) {
        if (goesBefore(row, other)) {
          chosen.set(i, row);
        }
        return;
      }
    }
    chosen.add(row);
  }

  private static boolean sameReading(Criterion a, Criterion b) {
    return a.at().equals(b.at()) && a.measure() == b.measure();
  }

  private static boolean goesBefore(Criterion a, Criterion b) {
    if (a.closeness() != b.closeness()) {
      return a.closeness() > b.closeness();
    }
    return a.validFrom() != null && (b.validFrom() == null || a.validFrom().isAfter(b.validFrom()));
  }

  /**
   * The rule of a programme on a day; null where it has none.
   *
   * @param jurisdiction jurisdiction of the site; null where it names none
   */
  public ProgrammeRule rule(ProgrammeRule.Subject subject, String jurisdiction, LocalDate day) {
    ProgrammeRule found = null;
    for (ProgrammeRule rule : rules.getOrDefault(key(jurisdiction), List.of())) {
      boolean newer =
          found == null
              || rule.validFrom() != null
                  && (found.validFrom() == null || rule.validFrom().isAfter(found.validFrom()));
      if (rule.subject() == subject && rule.appliesOn(day) && newer) {
        found = rule;
      }
    }
    return found;
  }

  /**
   * A rule about gauges themselves: where a jurisdiction has none, that of {@value #DEFAULT} holds,
   * because a gauge is no better or worse for the place where it is used.
   *
   * @return null where there is none
   */
  public ProgrammeRule gaugeRule(
      ProgrammeRule.Subject subject, String jurisdiction, LocalDate day) {
    ProgrammeRule own = rule(subject, jurisdiction, day);
    return own != null ? own : rule(subject, null, day);
  }

  /** The jurisdiction whose rows are used for a site that names this one, or null. */
  static String used(String jurisdiction) {
    return jurisdiction == null || jurisdiction.isBlank() ? DEFAULT : jurisdiction.trim();
  }

  /** The limit that holds for a reading; null for none. */
  static Criterion find(List<Criterion> limits, ComponentAt at, Measure measure) {
    for (Criterion row : limits) {
      if (row.measure() == measure && covers(row, at)) {
        return row;
      }
    }
    return null;
  }

  /** Whether a row speaks of a component; a row of the mainline holds for every mainline. */
  static boolean covers(Criterion row, ComponentAt at) {
    return row.at().component() == at.component() && row.at().line() == at.line();
  }

  private static String key(String jurisdiction) {
    return used(jurisdiction).toLowerCase(Locale.ROOT);
  }

  private Object readResolve() {
    return new AcceptanceCriteria(csv);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof AcceptanceCriteria criteria && criteria.csv.equals(csv);
  }

  @Override
  public int hashCode() {
    return csv.hashCode();
  }
}
