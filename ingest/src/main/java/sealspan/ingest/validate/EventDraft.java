package sealspan.ingest.validate;

/** What a file says of one or more events, before anything of it has been judged. */
public sealed interface EventDraft permits RowDraft {
  /** Where it stands. */
  Origin origin();
}
