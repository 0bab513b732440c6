package sealspan.table;

import java.util.List;
import sealspan.event.Means;

/** Everything that the tables say of the water of one zone. */
public record ZoneRows(
    @Means("zone id") String zoneId,
    @Means("grows with every event of the zone") long revision,
    @Means("water samples") List<WaterSampleRow> samples,
    @Means("disturbances") List<WaterDisturbanceRow> disturbances)
    implements Bundle {

  @Override
  public String key() {
    return "zone/" + zoneId;
  }
}
