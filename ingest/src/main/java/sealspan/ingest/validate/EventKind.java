package sealspan.ingest.validate;

/** What the column {@code event} of a row may say. */
public enum EventKind {
  SITE,
  ASSEMBLY,
  CHANGE,
  TEST,
  REPAIR,
  INSPECTION,
  ATTEMPT,
  SERVICE,
  REMOVAL,
  JOB,
  SAMPLE,
  DISTURBANCE,
  CALIBRATION,
  CERTIFICATE,
  VOID
}
