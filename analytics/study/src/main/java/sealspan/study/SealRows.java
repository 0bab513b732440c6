package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.SealInterval;
import sealspan.assembly.ServiceDays;
import sealspan.table.SealRow;

/** Rows of seals. */
final class SealRows {
  private SealRows() {}

  static List<SealRow> of(AssemblyHistory history) {
    List<SealRow> rows = new ArrayList<>(history.seals().size());
    ServiceDays service = ServiceDays.of(history.events());
    for (SealInterval seal : history.seals()) {
      rows.add(
          new SealRow(
              history.assemblyId(),
              Text.of(history.type()),
              history.sizeInch(),
              seal.at().text(),
              seal.gap(),
              seal.startDay(),
              seal.origin() == SealInterval.Origin.KNOWN,
              seal.entryDay(),
              seal.endDay(),
              seal.end().name(),
              Text.of(seal.reason()),
              seal.lastHeldOn(),
              seal.foundFailedOn(),
              service.between(seal.startDay(), seal.endDay())));
    }
    return rows;
  }
}
