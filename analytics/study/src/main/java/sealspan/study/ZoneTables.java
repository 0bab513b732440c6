package sealspan.study;

import java.util.Collection;
import sealspan.event.LoggedEvent;
import sealspan.table.ZoneRows;

/** From the events of one water zone to its rows; a pure function. */
public final class ZoneTables {
  private ZoneTables() {}

  /** The rows of one zone from its events, in any order and with any repetition. */
  public static ZoneRows of(String zoneId, Collection<LoggedEvent> events, long revision) {
    throw new UnsupportedOperationException();
  }
}
