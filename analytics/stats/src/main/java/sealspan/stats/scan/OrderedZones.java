package sealspan.stats.scan;

import java.util.List;

/**
 * Zones that grow place by place about each centre: circles, ellipses, reaches along pipes.
 *
 * @param windows windows, ordered by first period, then last
 * @param shapes where the places of zones come from
 * @param fewestExpected zones that expect fewer cases are not looked at
 */
public record OrderedZones(List<Window> windows, ScanStatistic.Shapes shapes, double fewestExpected)
    implements ZoneFinder {
  @Override
  public OnGrid on(CaseGrid grid) {
    List<ZoneOrder> orders = shapes.orders(grid.expectedByPlace());
    return new OnGrid() {
      @Override
      public boolean none() {
        return orders.isEmpty();
      }

      @Override
      public Cluster first(NullDraws draws, int replicates) {
        return ScanStatistic.first(
            grid,
            windows,
            orders,
            draws,
            // The seed is in the draws, and one cluster is looked for.
            new ScanSettings(replicates, 0, fewestExpected, 1, 1));
      }

      @Override
      public NearBest nearBest(double least) {
        return NearBest.of(grid, windows, orders, fewestExpected, least);
      }
    };
  }
}
