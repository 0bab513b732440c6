package sealspan.table;

import java.util.List;
import sealspan.event.Means;

/** Everything that the tables say of one assembly. */
public record AssemblyRows(
    @Means("assembly id") String assemblyId,
    @Means("grows with every event of the assembly and with every fit") long revision,
    @Means("the assembly") AssemblyRow assembly,
    @Means("its test rounds") List<TestRow> tests,
    @Means("its readings") List<ReadingRow> readings,
    @Means("its exposures") List<ExposureRow> exposures,
    @Means("its repairs") List<RepairRow> repairs,
    @Means("its seal intervals") List<SealRow> seals,
    @Means("what was noticed") List<FindingRow> findings,
    @Means("its jobs") List<JobRow> jobs,
    @Means("other events of its history") List<OccurrenceRow> occurrences,
    @Means("its failure rate") RateRow rate,
    @Means("its repairs of failed components, followed to the next test")
        List<RepairEpisodeRow> repairEpisodes,
    @Means("levels of its components now") List<LevelRow> levels,
    @Means("forecast of its next test; absent once it was removed") ForecastRow forecast,
    @Means("forecasts as they were issued, and what came of them")
        List<FrozenForecastRow> frozenForecasts)
    implements Bundle {

  @Override
  public String key() {
    return "assembly/" + assemblyId;
  }
}
