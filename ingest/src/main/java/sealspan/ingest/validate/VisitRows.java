package sealspan.ingest.validate;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.Moment;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Visit;
import sealspan.event.Visit.SequenceOrigin;
import sealspan.event.VisitAttempted;
import sealspan.ingest.validate.Problem.Fault;

/** Events of a row that tells of a whole visit. */
final class VisitRows {
  private static final Column ASSEMBLY_ID = Columns.named("assembly_id");
  private static final Column EVENT_ID = Columns.named("event_id");
  private static final Column DATE = Columns.named("date");
  private static final Column TIME = Columns.named("time");
  private static final Column VISIT_ID = Columns.named("visit_id");
  private static final Column VISIT_START = Columns.named("visit_start");
  private static final Column SEQUENCE = Columns.named("visit_sequence");
  private static final Column REPORT_NUMBER = Columns.named("report_number");
  private static final Column ATTEMPT_REASON = Columns.named("attempt_reason");
  private static final Column TESTER = Columns.named("tester_id");
  private static final Column REMARKS = Columns.named("remarks");

  private final RowDraft draft;
  private final LocalDate latestDay;
  private final List<Problem> problems;
  private final List<Told> told = new ArrayList<>(5);
  private final Fields row;
  private final String assemblyId;

  private VisitRows(RowDraft draft, LocalDate latestDay, List<Problem> problems) {
    this.draft = draft;
    this.latestDay = latestDay;
    this.problems = problems;
    this.row = Fields.of(draft, draft.plan().row(), latestDay, problems);
    this.assemblyId = row.need(ASSEMBLY_ID, "Every visit is to an assembly; give its id.");
  }

  /** The events of a row; what is wrong with it is added to the problems. */
  static List<Told> of(RowDraft draft, LocalDate latestDay, List<Problem> problems) {
    VisitRows rows = new VisitRows(draft, latestDay, problems);
    rows.tell();
    return rows.told;
  }

  private void tell() {
    RowPlan plan = draft.plan();
    Fields found = fields(plan.found());
    Fields repair = fields(plan.repair());
    Fields left = fields(plan.left());
    boolean ofFound = plan.found().isTold(draft.cells());
    boolean ofRepair = plan.repair().isTold(draft.cells());
    boolean ofLeft = plan.left().isTold(draft.cells());
    boolean ofAttempt = row.has(ATTEMPT_REASON);
    Fields first = ofFound ? found : ofRepair ? repair : ofLeft ? left : row;
    boolean ofVisit = ofFound || ofRepair || ofLeft || ofAttempt || plan.tellsOfJob(draft.cells());
    Moment day = ofVisit || row.has(DATE) ? needed(first, null) : null;
    tellOfPlace(day);
    String visitId = visitId(first, day);
    if (ofFound) {
      Moment when = needed(found, TIME);
      Visit visit = visit(found, visitId, 1);
      add(TestRows.of(found, row, assemblyId, when, visit, Phase.AS_FOUND), found);
    }
    if (ofRepair) {
      Moment when = needed(repair, TIME);
      add(RepairRows.of(repair, assemblyId, when, visit(repair, visitId, 2)), repair);
    }
    if (ofLeft) {
      Moment when = needed(left, TIME);
      add(TestRows.of(left, row, assemblyId, when, visit(left, visitId, 3), Phase.AS_LEFT), left);
    }
    if (ofAttempt) {
      tellOfAttempt(found, visitId);
    }
    if (plan.tellsOfJob(draft.cells())) {
      add(OtherRows.job(row, assemblyId, day, visitId), null);
    }
    if (told.isEmpty() && problems.isEmpty()) {
      problems.add(
          new Problem(
              null,
              Fault.NOTHING_TOLD,
              "The row names an assembly and tells nothing of it.",
              "Fill in a test, a repair, an attempt or the assembly's type, or leave the row out."));
    }
  }

  private Fields fields(BlockPlan block) {
    return Fields.of(draft, block, latestDay, problems);
  }

  private static Moment needed(Fields block, Column time) {
    if (!block.has(DATE)) {
      block.need(DATE, "Give the day of the visit.");
      return null;
    }
    return block.moment(DATE, time);
  }

  private void tellOfPlace(Moment day) {
    boolean ofSite = draft.plan().tellsOfSite(draft.cells());
    boolean ofAssembly = draft.plan().tellsOfAssembly(draft.cells());
    if (!ofSite && !ofAssembly && !row.has(PlaceRows.SITE_ID)) {
      return;
    }
    // A place that the source does not name goes by the name of the assembly that stands there.
    String site = row.has(PlaceRows.SITE_ID) ? row.text(PlaceRows.SITE_ID) : assemblyId;
    String position = row.has(PlaceRows.POSITION_ID) ? row.text(PlaceRows.POSITION_ID) : assemblyId;
    LocalDate otherwise = day == null ? null : day.day();
    var installed = PlaceRows.installed(row, assemblyId, site, position, otherwise);
    if (ofSite) {
      Moment since = day != null ? Moment.on(day.day()) : installed.when();
      add(PlaceRows.site(row, site, position, dated(since)), null);
    }
    add(installed, null);
  }

  private Moment dated(Moment moment) {
    return moment == null ? null : new Moment(moment.day(), null, row.timeZone());
  }

  private void tellOfAttempt(Fields found, String visitId) {
    Moment when = needed(found, TIME);
    add(
        new VisitAttempted(
            assemblyId,
            when,
            visitId,
            found.code(ATTEMPT_REASON, Codes.ATTEMPT_REASON),
            found.text(TESTER),
            found.text(REMARKS)),
        found);
  }

  /** Where the source names no visit, assembly, first day and report number do. */
  private String visitId(Fields first, Moment day) {
    String given = row.text(VISIT_ID);
    if (given != null || day == null) {
      return given;
    }
    String number = first.text(REPORT_NUMBER);
    return assemblyId + "/" + day.day() + (number == null ? "" : "/" + number);
  }

  /** Null, beside the problem that has been noted, where no day names the visit. */
  private Visit visit(Fields block, String visitId, int derived) {
    Integer start = row.minuteOfDay(VISIT_START);
    Integer given = block.whole(SEQUENCE, 1, 99);
    if (visitId == null) {
      return null;
    }
    return given == null
        ? new Visit(visitId, start, derived, SequenceOrigin.DERIVED)
        : new Visit(visitId, start, given, SequenceOrigin.GIVEN);
  }

  private void add(AssemblyEvent event, Fields block) {
    Instant reported = Reported.told(block == null ? row : block, event);
    told.add(new Told(event, block == null ? null : block.text(EVENT_ID), reported));
  }
}
