package sealspan.jobs;

import java.util.EnumSet;
import org.apache.flink.streaming.api.datastream.DataStream;
import sealspan.event.Subject;

/** Which events belong to which history; the same for both jobs. */
final class Routing {
  private Routing() {}

  /** The events of zones. */
  static DataStream<Addressed> zones(DataStream<Addressed> events) {
    return events.filter(new OfKind(EnumSet.of(Subject.Kind.ZONE)));
  }

  /**
   * The events of assemblies' histories: their own, and those of the sites, gauges and testers that
   * they refer to.
   */
  static DataStream<Addressed> assemblies(DataStream<Addressed> events) {
    return withReferred(events, EnumSet.of(Subject.Kind.ASSEMBLY));
  }

  /** The events of assemblies' histories and those of zones, in one stream. */
  static DataStream<Addressed> assembliesAndZones(DataStream<Addressed> events) {
    return withReferred(events, EnumSet.of(Subject.Kind.ASSEMBLY, Subject.Kind.ZONE));
  }

  private static DataStream<Addressed> withReferred(
      DataStream<Addressed> events, EnumSet<Subject.Kind> kinds) {
    DataStream<Addressed> own = events.filter(new OfKind(kinds));
    DataStream<Addressed> referred =
        events
            .filter(
                new OfKind(EnumSet.of(Subject.Kind.SITE, Subject.Kind.GAUGE, Subject.Kind.TESTER)))
            .keyBy(new HistoryKey())
            .process(new ReferenceDirectory(), Addressed.TYPE)
            .name("reference directory")
            .uid("reference-directory");
    return own.union(referred);
  }
}
