package sealspan.event;

/** Names of the topics that are kept for ever. */
public final class Topics {
  /** Events, by subject; see {@link EventHeaders} for their envelope. */
  public static final String EVENTS = "sealspan.events";

  /** Rows that did not go in, with the reason. */
  public static final String QUARANTINE = "sealspan.quarantine";

  /** What was decided and cannot be derived again, in one order. */
  public static final String LEDGER = "sealspan.ledger";

  private Topics() {}
}
