package sealspan.study.practice;

import sealspan.event.Means;

/** What becomes of a visit on its way to the record. Shares are of visits unless said otherwise. */
public record ReportHabits(
    @Means("reported 45 to 240 days after the visit; the rest within 10 days") double late,
    @Means("entered with a wrong reading and corrected later") double corrected,
    @Means("sent twice") double duplicated,
    @Means("a report entered for the wrong assembly and voided later") double voided,
    @Means("sent again under the same number with another content") double conflicting,
    @Means("share of testers who stop at the first deficiency") double testersStopping,
    @Means("share of testers who copy last year's readings at every second visit")
        double testersCopying,
    @Means("failed as-found rounds that are reported as passed") double claimedPass,
    @Means("assemblies that could not be tested") double notTestable,
    @Means("downstream shutoff that leaked") double shutoffLeaked,
    @Means("of repair items, without a mechanism") double mechanismNotRecorded,
    @Means("of repair items, without a cause") double causeNotRecorded,
    @Means("of calibrations, share that are made up to 45 days late") double gaugeLapsed,
    @Means("of certificates, share that are renewed up to 60 days late") double certificateLapsed,
    @Means("of visits, share with recorded costs") double costed) {

  /** Reports as people write them. */
  public static ReportHabits usual() {
    return new ReportHabits(
        0.05, 0.02, 0.01, 0.003, 0.001, 0.3, 0.02, 0.004, 0.003, 0.03, 0.25, 0.4, 0.1, 0.1, 0.3);
  }

  /** Every report complete, true, and in time. */
  public static ReportHabits flawless() {
    return new ReportHabits(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
  }
}
