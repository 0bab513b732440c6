package sealspan.jobs;

import java.util.EnumSet;
import org.apache.flink.api.common.functions.FilterFunction;
import sealspan.event.Subject;

/** What goes to subjects of some kinds. */
final class OfKind implements FilterFunction<Addressed> {
  private static final long serialVersionUID = 1L;

  private final EnumSet<Subject.Kind> kinds;

  OfKind(EnumSet<Subject.Kind> kinds) {
    this.kinds = kinds;
  }

  @Override
  public boolean filter(Addressed event) {
    return kinds.contains(Subject.kindOfKey(event.to));
  }
}
