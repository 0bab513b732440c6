package sealspan.event;

/**
 * One thing that happened. An event is never edited: a mistake is put right by {@link
 * EventCorrected} or {@link EventVoided}.
 */
public sealed interface AssemblyEvent
    permits SiteDescribed,
        AssemblyInstalled,
        AssemblyChanged,
        TestPerformed,
        RepairPerformed,
        InspectionPerformed,
        VisitAttempted,
        ServiceStateChanged,
        AssemblyRemoved,
        JobCosted,
        WaterSampled,
        WaterDisturbed,
        GaugeCalibrated,
        TesterCertified,
        EventCorrected,
        EventVoided {

  /** What the event is about; it decides the partition, so one subject's events stay in order. */
  Subject subject();

  /** When it happened (valid time); never null. */
  Moment when();
}
