package sealspan.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sealspan.event.Action;
import sealspan.stats.ageing.RepairedLife;
import sealspan.table.AssemblyRows;
import sealspan.table.ExposureRow;
import sealspan.table.RepairRow;

/**
 * The life of one component from new: its exposures in order, and between them the repairs. Days
 * that lie in no exposure age it unseen.
 */
final class ComponentLife {
  /** Kind of a repair that keeps the seal: cleaned, flushed, turned, adjusted, other parts. */
  static final int SEAL_KEPT = 0;

  /** Kind of a repair that renews the seal. */
  static final int SEAL_RENEWED = 1;

  private final RepairedLife.Builder life = RepairedLife.sinceNew();
  private LocalDate now;

  private ComponentLife(LocalDate isNew) {
    now = isNew;
  }

  /** The life at a position whose origin is known. */
  static RepairedLife of(AssemblyRows rows, SealPosition position) {
    ComponentLife life = new ComponentLife(position.seals().get(0).startDay());
    List<ExposureRow> exposures =
        rows.exposures().stream()
            .filter(e -> e.component().equals(position.component()))
            .sorted(Comparator.comparing(ExposureRow::toDay))
            .toList();
    List<Work> works = works(rows, position.component());
    int next = 0;
    for (ExposureRow exposure : exposures) {
      // Work of the day on which an exposure begins comes before it, of the day it ends after it.
      while (next < works.size() && !works.get(next).day().isAfter(exposure.fromDay())) {
        life.work(works.get(next++));
      }
      while (next < works.size() && works.get(next).day().isBefore(exposure.toDay())) {
        life.work(works.get(next++));
      }
      life.exposure(exposure);
    }
    while (next < works.size()) {
      life.work(works.get(next++));
    }
    return life.life.build();
  }

  private void exposure(ExposureRow exposure) {
    ageUnseen(exposure.fromDay());
    LocalDate end = exposure.toDay();
    if (!now.isBefore(end)) {
      return;
    }
    double years = years(now, end);
    if (exposure.failed()) {
      life.failed(years);
    } else {
      life.passed(years);
    }
    now = end;
  }

  private void work(Work work) {
    ageUnseen(work.day());
    if (work.strongest() == Action.ASSEMBLY_REPLACED) {
      life.replaced();
    } else {
      boolean renewed = work.strongest().sealEffect() == Action.SealEffect.RENEWED;
      life.repaired(renewed ? SEAL_RENEWED : SEAL_KEPT);
    }
  }

  private void ageUnseen(LocalDate day) {
    if (now.isBefore(day)) {
      life.unseen(years(now, day));
      now = day;
    }
  }

  private static double years(LocalDate from, LocalDate to) {
    return SealPosition.days(from, to) / RatePriors.YEAR_DAYS;
  }

  /** The strongest action on a component on one day. */
  private record Work(LocalDate day, Action strongest) {}

  private static List<Work> works(AssemblyRows rows, String component) {
    List<Work> works = new ArrayList<>();
    List<RepairRow> repairs =
        rows.repairs().stream()
            .filter(r -> r.component().equals(component) || r.component().equals(RatePriors.WHOLE))
            .filter(r -> r.action() != null && !r.action().equals(Action.NONE.name()))
            .sorted(Comparator.comparing(RepairRow::day))
            .toList();
    for (RepairRow repair : repairs) {
      Action action = Action.valueOf(repair.action());
      int last = works.size() - 1;
      if (last >= 0 && works.get(last).day().equals(repair.day())) {
        Action other = works.get(last).strongest();
        works.set(last, new Work(repair.day(), action.compareTo(other) > 0 ? action : other));
      } else {
        works.add(new Work(repair.day(), action));
      }
    }
    return works;
  }
}
