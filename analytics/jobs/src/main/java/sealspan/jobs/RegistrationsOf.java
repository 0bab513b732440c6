package sealspan.jobs;

import org.apache.flink.api.common.functions.FlatMapFunction;
import org.apache.flink.util.Collector;
import sealspan.assembly.References;
import sealspan.event.Subject;

/** The subjects that an event of an assembly points to. */
final class RegistrationsOf implements FlatMapFunction<Addressed, Registration> {
  private static final long serialVersionUID = 1L;

  @Override
  public void flatMap(Addressed event, Collector<Registration> out) {
    for (Subject subject : References.of(EventBytes.unpack(event.event).event())) {
      out.collect(new Registration(subject.key(), event.to));
    }
  }
}
