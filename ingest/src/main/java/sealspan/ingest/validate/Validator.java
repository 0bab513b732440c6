package sealspan.ingest.validate;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.LoggedEvent;
import sealspan.event.NaturalKey;

/**
 * Judges drafts one by one. The outcome depends on the draft, the code lists and the {@link Intake}
 * alone: never on other rows, other events or the clock.
 */
public final class Validator {
  private final Intake intake;

  public Validator(Intake intake) {
    this.intake = intake;
  }

  /** The events of a draft, or all that is wrong with it. */
  public Validation validate(EventDraft draft) {
    List<Problem> problems = new ArrayList<>(0);
    List<Told> told = told((RowDraft) draft, problems);
    if (!problems.isEmpty()) {
      return new Validation.Rejected(problems);
    }
    List<LoggedEvent> events = new ArrayList<>(told.size());
    for (Told each : told) {
      String id =
          each.givenId() != null ? each.givenId() : NaturalKey.idOf(intake.source(), each.event());
      events.add(Reported.logged(each, id, intake));
    }
    return new Validation.Accepted(events);
  }

  private List<Told> told(RowDraft draft, List<Problem> problems) {
    return draft.plan().form() == RowPlan.Form.VISIT
        ? VisitRows.of(draft, intake.latestDay(), problems)
        : EventRows.of(draft, intake.latestDay(), problems);
  }
}
