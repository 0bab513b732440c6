package sealspan.assembly;

import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.JobCosted;
import sealspan.event.LoggedEvent;
import sealspan.event.Money;
import sealspan.event.Subject;

/** Checks of events against each other, whatever they say. */
final class EventChecks {
  private EventChecks() {}

  static void conflicts(Subject subject, EventResolution resolved, FindingLog log) {
    for (EventResolution.Conflict conflict : resolved.conflicts()) {
      if (conflict.holds().event().subject().equals(subject)) {
        log.add(
            Finding.Kind.CONFLICT,
            "two contents under one id",
            conflict.holds().id(),
            conflict.holds().event(),
            "Another content came under the same id, from "
                + conflict.keptOut().source()
                + ". The one that the log took in first counts; if the other is right, correct the"
                + " event.");
      }
    }
  }

  static void targetless(Subject subject, EventResolution resolved, FindingLog log) {
    for (LoggedEvent amendment : resolved.targetless()) {
      if (!amendment.event().subject().equals(subject)) {
        continue;
      }
      String target =
          amendment.event() instanceof EventVoided voided
              ? voided.targetEventId()
              : ((EventCorrected) amendment.event()).targetEventId();
      log.add(
          Finding.Kind.INCOMPLETE,
          "nothing to correct",
          amendment.id(),
          amendment.event(),
          "It "
              + (amendment.event() instanceof EventVoided ? "takes back" : "corrects")
              + " the event "
              + target
              + ", which is not in this history. Nothing is changed.");
    }
  }

  static void currencies(StandingEvent event, JobCosted job, FindingLog log) {
    String first = null;
    for (Money money : new Money[] {job.invoiced(), job.labour(), job.travel(), job.parts()}) {
      if (money == null || money.currency() == null) {
        continue;
      }
      if (first != null && !first.equals(money.currency())) {
        log.add(
            Finding.Kind.CONFLICT,
            "two currencies in one job",
            event,
            "Amounts in " + first + " and " + money.currency() + "; only the first are shown.");
        return;
      }
      first = money.currency();
    }
  }
}
