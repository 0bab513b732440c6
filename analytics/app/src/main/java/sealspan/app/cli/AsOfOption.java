package sealspan.app.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import picocli.CommandLine.Option;
import sealspan.answers.AsOf;

/** The options of commands that can answer as the log knew it on an earlier day. */
final class AsOfOption {
  @Option(
      names = "--as-of",
      paramLabel = "DATE",
      description =
          "as the log knew it at the end of that day; worked out from the events, so it takes"
              + " longer")
  private LocalDate day;

  @Option(
      names = "--time-zone",
      paramLabel = "ZONE",
      description =
          "in which the day of --as-of ends, such as America/Denver; without it this"
              + " machine's")
  private ZoneId timeZone = ZoneId.systemDefault();

  /** The moment that was asked for; null for now. */
  AsOf asOf() {
    return day == null ? null : new AsOf(day, timeZone);
  }
}
