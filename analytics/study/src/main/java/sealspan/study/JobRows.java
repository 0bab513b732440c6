package sealspan.study;

import java.util.stream.Stream;
import sealspan.event.JobCosted;
import sealspan.event.Money;
import sealspan.table.JobRow;

/** Rows of jobs. */
final class JobRows {
  private JobRows() {}

  /** The row of a job; amounts in another currency than the first, or in none, are left out. */
  static JobRow of(String eventId, JobCosted job) {
    String currency =
        Stream.of(job.invoiced(), job.labour(), job.travel(), job.parts())
            .filter(money -> money != null && money.currency() != null)
            .map(Money::currency)
            .findFirst()
            .orElse(null);
    return new JobRow(
        job.assemblyId(),
        eventId,
        job.when().day(),
        job.visitId(),
        job.contractId(),
        job.covered(),
        currency,
        minor(job.labour(), currency),
        minor(job.travel(), currency),
        minor(job.parts(), currency),
        minor(job.invoiced(), currency));
  }

  private static Long minor(Money money, String currency) {
    boolean same = money != null && currency != null && currency.equals(money.currency());
    return same ? money.minorUnits() : null;
  }
}
