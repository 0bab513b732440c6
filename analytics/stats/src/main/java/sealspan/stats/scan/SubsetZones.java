package sealspan.stats.scan;

import java.util.List;

/**
 * Zones of any places within a ball about each centre, found by {@link SubsetScan}.
 *
 * @param windows windows, ordered by first period, then last
 * @param balls where the places of the balls come from; a few tens of places each are enough
 */
public record SubsetZones(List<Window> windows, ScanStatistic.Shapes balls) implements ZoneFinder {
  @Override
  public OnGrid on(CaseGrid grid) {
    List<ZoneOrder> orders = balls.orders(grid.expectedByPlace());
    SubsetScan scan = new SubsetScan(grid, windows, orders);
    return new OnGrid() {
      @Override
      public boolean none() {
        return orders.isEmpty();
      }

      @Override
      public Cluster first(NullDraws draws, int replicates) {
        return scan.first(draws, replicates);
      }

      @Override
      public NearBest nearBest(double least) {
        return scan.nearBest(least);
      }
    };
  }
}
