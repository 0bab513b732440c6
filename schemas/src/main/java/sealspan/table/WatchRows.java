package sealspan.table;

import java.util.List;
import sealspan.event.Means;

/** The watch over fouling failures as they become known: its alarms and where it stands. */
public record WatchRows(
    @Means("what is watched: all") String scope,
    @Means("grows with every event and model that the watch has seen") long revision,
    @Means("alarms, by run and time") List<WatchAlarmRow> alarms,
    @Means("where the runs stand") List<WatchStateRow> states)
    implements Bundle {
  /** Key of the only bundle there is. */
  public static final String KEY = "watch/all";

  @Override
  public String key() {
    return "watch/" + scope;
  }
}
