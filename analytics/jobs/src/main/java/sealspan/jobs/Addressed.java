package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.event.LoggedEvent;

/** An event on its way to the history of a subject: its own, or one that refers to it. */
public final class Addressed {
  static final TypeInformation<Addressed> TYPE = Types.POJO(Addressed.class);

  /** Key of the subject whose history it goes to. */
  public String to;

  /** Id of the event. */
  public String id;

  /** The event, packed by {@link EventBytes}. */
  public byte[] event;

  /** For Flink. */
  public Addressed() {}

  Addressed(String to, String id, byte[] event) {
    this.to = to;
    this.id = id;
    this.event = event;
  }

  /** An event on its way to the history of its own subject. */
  static Addressed toItsSubject(LoggedEvent event) {
    return new Addressed(event.event().subject().key(), event.id(), EventBytes.pack(event));
  }
}
