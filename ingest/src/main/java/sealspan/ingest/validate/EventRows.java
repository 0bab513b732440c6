package sealspan.ingest.validate;

import java.time.LocalDate;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.EventCorrected;
import sealspan.event.EventVoided;
import sealspan.event.Moment;
import sealspan.event.Subject;
import sealspan.event.TestPerformed.Phase;
import sealspan.event.Visit;
import sealspan.event.Visit.SequenceOrigin;
import sealspan.ingest.validate.Problem.Fault;

/** The event of a row that tells of one. */
final class EventRows {
  private static final Column EVENT = Columns.named("event");
  private static final Column EVENT_ID = Columns.named("event_id");
  private static final Column ASSEMBLY_ID = Columns.named("assembly_id");
  private static final Column DATE = Columns.named("date");
  private static final Column TIME = Columns.named("time");
  private static final Column INSTALL_DATE = Columns.named("install_date");
  private static final Column KNOWN_SINCE = Columns.named("known_since");
  private static final Column VISIT_ID = Columns.named("visit_id");
  private static final Column VISIT_START = Columns.named("visit_start");
  private static final Column SEQUENCE = Columns.named("visit_sequence");
  private static final Column REPORT_NUMBER = Columns.named("report_number");
  private static final Column PHASE = Columns.named("phase");
  private static final Column TARGET = Columns.named("corrects_event_id");
  private static final Column DECIDED_ON = Columns.named("corrected_on");
  private static final Column DECIDED_BY = Columns.named("corrected_by");
  private static final Column WHY = Columns.named("corrected_why");
  private static final Column ABOUT = Columns.named("about");

  private final Fields row;

  private EventRows(Fields row) {
    this.row = row;
  }

  /** The event of a row; an empty list, with problems, where its kind is not known. */
  static List<Told> of(RowDraft draft, LocalDate latestDay, List<Problem> problems) {
    Fields row = Fields.of(draft, draft.plan().row(), latestDay, problems);
    row.need(EVENT, "Say what the row tells of, such as test, repair or calibration.");
    EventKind kind = row.code(EVENT, Codes.EVENT);
    if (kind == null) {
      return List.of();
    }
    AssemblyEvent event = new EventRows(row).event(kind);
    boolean withoutTarget = kind != EventKind.VOID && !row.has(TARGET);
    if (withoutTarget && (row.has(DECIDED_ON) || row.has(DECIDED_BY) || row.has(WHY))) {
      row.need(TARGET, "The row tells of a correction; give the id of the event it corrects.");
    }
    if (event != null && problems.isEmpty() && kind != EventKind.VOID && row.has(TARGET)) {
      event = corrected(row, event);
    }
    return event == null
        ? List.of()
        : List.of(new Told(event, row.text(EVENT_ID), Reported.told(row, event)));
  }

  private static EventCorrected corrected(Fields row, AssemblyEvent replacement) {
    return new EventCorrected(
        row.text(TARGET),
        decided(row),
        row.text(DECIDED_BY),
        row.need(WHY, "Say why the earlier event is corrected."),
        replacement);
  }

  private static Moment decided(Fields row) {
    if (!row.has(DECIDED_ON)) {
      row.need(DECIDED_ON, "Give the day on which the correction was decided.");
      return null;
    }
    return row.moment(DECIDED_ON, null);
  }

  private AssemblyEvent event(EventKind kind) {
    return switch (kind) {
      case SITE -> site();
      case ASSEMBLY -> installed();
      case CHANGE -> PlaceRows.changed(row, assemblyId(), when());
      case TEST -> test();
      case REPAIR -> repair();
      case INSPECTION -> OtherRows.inspection(row, assemblyId(), when(), optionalVisit());
      case ATTEMPT -> OtherRows.attempt(row, assemblyId(), when(), row.text(VISIT_ID));
      case SERVICE -> OtherRows.service(row, assemblyId(), when());
      case REMOVAL -> OtherRows.removal(row, assemblyId(), when());
      case JOB -> OtherRows.job(row, assemblyId(), when(), row.text(VISIT_ID));
      case SAMPLE -> OtherRows.sample(row, when());
      case DISTURBANCE -> OtherRows.disturbance(row, when());
      case CALIBRATION -> OtherRows.calibration(row, when());
      case CERTIFICATE -> OtherRows.certificate(row, when());
      case VOID -> voided();
    };
  }

  private String assemblyId() {
    return row.need(ASSEMBLY_ID, "The event is about an assembly; give its id.");
  }

  private Moment when() {
    if (!row.has(DATE)) {
      row.need(DATE, "Give the day on which it happened.");
      return null;
    }
    return row.moment(DATE, TIME);
  }

  private AssemblyEvent site() {
    String siteId = row.need(PlaceRows.SITE_ID, "The row describes a site; give its id.");
    return PlaceRows.site(row, siteId, row.text(PlaceRows.POSITION_ID), when());
  }

  private AssemblyEvent installed() {
    boolean dated = row.has(INSTALL_DATE) || row.has(KNOWN_SINCE);
    Moment otherwise = dated ? null : when();
    return PlaceRows.installed(
        row,
        assemblyId(),
        row.text(PlaceRows.SITE_ID),
        row.text(PlaceRows.POSITION_ID),
        otherwise == null ? null : otherwise.day());
  }

  private AssemblyEvent test() {
    String assemblyId = assemblyId();
    Moment when = when();
    row.need(PHASE, "Say whether the test is as_found or as_left.");
    Phase phase = row.code(PHASE, Codes.PHASE);
    Visit visit = visit(assemblyId, when, phase == Phase.AS_LEFT ? 3 : 1);
    return TestRows.of(row, row, assemblyId, when, visit, phase);
  }

  private AssemblyEvent repair() {
    String assemblyId = assemblyId();
    Moment when = when();
    return RepairRows.of(row, assemblyId, when, visit(assemblyId, when, 2));
  }

  /** Null, beside the problem that has been noted, where no day names the visit. */
  private Visit visit(String assemblyId, Moment when, int derived) {
    String id = row.text(VISIT_ID);
    if (id == null && when != null) {
      String number = row.text(REPORT_NUMBER);
      id = assemblyId + "/" + when.day() + (number == null ? "" : "/" + number);
    }
    Integer start = row.minuteOfDay(VISIT_START);
    Integer given = row.whole(SEQUENCE, 1, 99);
    if (id == null) {
      return null;
    }
    return given == null
        ? new Visit(id, start, derived, SequenceOrigin.DERIVED)
        : new Visit(id, start, given, SequenceOrigin.GIVEN);
  }

  private Visit optionalVisit() {
    Integer given = row.whole(SEQUENCE, 1, 99);
    String id = row.text(VISIT_ID);
    return id == null
        ? null
        : new Visit(
            id,
            row.minuteOfDay(VISIT_START),
            given == null ? 1 : given,
            given == null ? SequenceOrigin.DERIVED : SequenceOrigin.GIVEN);
  }

  private AssemblyEvent voided() {
    Subject about = null;
    String text = row.text(ABOUT);
    if (text != null) {
      try {
        about = Subject.ofKey(text);
      } catch (IllegalArgumentException e) {
        row.add(
            ABOUT,
            Fault.UNKNOWN_CODE,
            Fields.quoted(text) + " names no subject.",
            "Write kind and id, such as assembly/BF-1042, site/S-3, zone/Z-EAST.");
      }
    } else {
      String assemblyId =
          row.need(ASSEMBLY_ID, "Name the assembly of the voided event, or its subject in about.");
      about = assemblyId == null ? null : Subject.assembly(assemblyId);
    }
    return new EventVoided(
        row.need(TARGET, "Give the id of the event that is taken back."),
        about,
        decided(row),
        row.text(DECIDED_BY),
        row.need(WHY, "Say why the event is taken back."));
  }
}
