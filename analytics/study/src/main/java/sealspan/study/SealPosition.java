package sealspan.study;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sealspan.table.AssemblyRows;
import sealspan.table.SealRow;

/**
 * The seals that followed one another at one position of one assembly, in order.
 *
 * @param assemblyId the assembly
 * @param component the component that the seals belong to
 * @param seals at least one, in order of time
 */
record SealPosition(String assemblyId, String component, List<SealRow> seals) {

  /** The positions of an assembly; of one component only where one is named. */
  static List<SealPosition> of(AssemblyRows rows, String component) {
    Map<String, List<SealRow>> byComponent = new TreeMap<>();
    for (SealRow seal : rows.seals()) {
      if (component == null || component.equals(seal.component())) {
        byComponent.computeIfAbsent(seal.component(), c -> new ArrayList<>()).add(seal);
      }
    }
    List<SealPosition> positions = new ArrayList<>();
    byComponent.forEach(
        (name, seals) -> {
          seals.sort(Comparator.comparingInt(SealRow::gap));
          positions.add(new SealPosition(rows.assemblyId(), name, seals));
        });
    return positions;
  }

  /** Whether the first seal was new when its time began. */
  boolean originKnown() {
    return seals.get(0).originKnown();
  }

  /** Days from the start of the first seal to a day. */
  int age(LocalDate day) {
    return days(seals.get(0).startDay(), day);
  }

  /** Whole days between two days. */
  static int days(LocalDate from, LocalDate to) {
    return Math.toIntExact(ChronoUnit.DAYS.between(from, to));
  }

  /** Whether a seal ended by being replaced. */
  static boolean replaced(SealRow seal) {
    return seal.endedBy().equals("REPLACED");
  }
}
