package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.ServiceDays;
import sealspan.assembly.TestExposure;
import sealspan.table.ExposureRow;

/** Rows of exposures. */
final class ExposureRows {
  private ExposureRows() {}

  static List<ExposureRow> of(AssemblyHistory history) {
    List<ExposureRow> rows = new ArrayList<>(history.exposures().size());
    ServiceDays service = ServiceDays.of(history.events());
    for (TestExposure exposure : history.exposures()) {
      rows.add(
          new ExposureRow(
              history.assemblyId(),
              exposure.eventId(),
              exposure.at().text(),
              exposure.fromDay(),
              exposure.toDay(),
              exposure.exposureDays(),
              service.between(exposure.fromDay(), exposure.toDay()),
              exposure.failed(),
              Text.of(exposure.failureClass()),
              exposure.lastAction().name().toLowerCase(Locale.ROOT)));
    }
    return rows;
  }
}
