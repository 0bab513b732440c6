package sealspan.event;

/** A change of what is known of an assembly from a day on; not recorded means unchanged. */
public record AssemblyChanged(
    @Means("id of the assembly") String assemblyId,
    @Means("from when the change holds") Moment when,
    @Means("new position") String positionId,
    @Means("new water zone") String zoneId,
    @Means("new hazard class") SiteDescribed.HazardClass hazard,
    @Means("new use of the water") SiteDescribed.WaterUse use,
    @Means("new owner id") String ownerId,
    @Means("new orientation") String orientation,
    @Means("what was done at the site: strainer, pressure control, heating, ...") String siteChange,
    @Means("remarks") String remarks)
    implements AssemblyEvent {

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
