package sealspan.jobs;

import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import sealspan.event.LoggedEvent;

/**
 * An event on its way to the history of a subject: its own, or one that refers to it. Forecasts
 * that were issued for an assembly travel the same way.
 */
public final class Addressed {
  static final TypeInformation<Addressed> TYPE = Types.POJO(Addressed.class);

  /** What travels. */
  public enum What {
    EVENT,
    FORECAST
  }

  /** Key of the subject whose history it goes to. */
  public String to;

  /** The event, packed by {@link EventBytes}; the forecast, by {@link ForecastReader}. */
  public byte[] event;

  /** What it is. */
  public What what = What.EVENT;

  /** For Flink. */
  public Addressed() {}

  Addressed(String to, byte[] event) {
    this.to = to;
    this.event = event;
  }

  /** A forecast on its way to the assembly that it is for. */
  static Addressed forecast(String assemblyKey, byte[] packed) {
    Addressed forecast = new Addressed(assemblyKey, packed);
    forecast.what = What.FORECAST;
    return forecast;
  }

  boolean isForecast() {
    return what == What.FORECAST;
  }

  /** An event on its way to the history of its own subject. */
  static Addressed toItsSubject(LoggedEvent event) {
    return new Addressed(event.event().subject().key(), EventBytes.pack(event));
  }
}
