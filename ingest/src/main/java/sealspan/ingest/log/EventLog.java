package sealspan.ingest.log;

import sealspan.event.LoggedEvent;

/**
 * The log of events, the only truth. The recorded time that an event carries when it is handed in
 * does not count: the log sets it. Two events of one id are told apart by what happened, not by
 * their envelope.
 */
public interface EventLog extends AppendLog<LoggedEvent> {}
