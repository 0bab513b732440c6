package sealspan.jobs;

import static java.nio.charset.StandardCharsets.UTF_8;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;

/**
 * An event on its way to the history of a subject: its own, or one that refers to it. Forecasts
 * that were issued for an assembly travel the same way, and to the sites, gauges and testers, who
 * refers to them.
 */
public final class Addressed {
  static final TypeInformation<Addressed> TYPE = Types.POJO(Addressed.class);

  /** What travels. */
  public enum What {
    EVENT,
    FORECAST,
    /** That the history of an assembly needs the events of the subject. */
    REFERENCE
  }

  /** Key of the subject whose history it goes to. */
  public String to;

  /**
   * The event, packed by {@link EventBytes}; the forecast, by {@link ForecastReader}; of a
   * reference the key of the assembly, in UTF-8.
   */
  public byte[] packed;

  /** What it is. */
  public What what = What.EVENT;

  /** For Flink. */
  public Addressed() {}

  private Addressed(String to, What what, byte[] packed) {
    this.to = to;
    this.what = what;
    this.packed = packed;
  }

  /** An event on its way to the history of a subject. */
  static Addressed event(String to, byte[] packed) {
    return new Addressed(to, What.EVENT, packed);
  }

  /** A forecast on its way to the assembly that it is for. */
  static Addressed forecast(String assemblyKey, byte[] packed) {
    return new Addressed(assemblyKey, What.FORECAST, packed);
  }

  /** That an assembly refers to a site, gauge or tester, on its way there. */
  static Addressed reference(String subjectKey, String assemblyKey) {
    return new Addressed(subjectKey, What.REFERENCE, assemblyKey.getBytes(UTF_8));
  }

  /** Key of the assembly that refers to the subject; for references only. */
  String assembly() {
    return new String(packed, UTF_8);
  }

  boolean isForecast() {
    return what == What.FORECAST;
  }

  boolean isReference() {
    return what == What.REFERENCE;
  }
}
