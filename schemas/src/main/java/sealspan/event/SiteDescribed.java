package sealspan.event;

/** What is known of a site (premises) from a day on; a later description replaces an earlier. */
public record SiteDescribed(
    @Means("id of the site") String siteId,
    @Means("from when the description holds") Moment when,
    @Means("position in the pipework that is described; none: the whole site") String positionId,
    @Means("label of the premises; never a person's name") String label,
    @Means("water meter id") String meterId,
    @Means("customer account id") String accountId,
    @Means("owner id; the name lives outside the log") String ownerId,
    @Means("WGS84 latitude, degrees") Double latitude,
    @Means("WGS84 longitude, degrees") Double longitude,
    @Means("elevation, metres") Double elevationM,
    @Means("water zone (pressure or quality zone)") String zoneId,
    @Means("jurisdiction whose criteria apply") String jurisdiction,
    @Means("IANA time zone") String timeZone,
    @Means("hazard class as the programme names it") HazardClass hazard,
    @Means("containment at the meter or isolation inside") Protection protection,
    @Means("what the water is used for") WaterUse use,
    @Means("how to get to it, such as key, escort, hours") String access,
    @Means("whether it stands in a vault or pit") Boolean vault)
    implements AssemblyEvent {

  /** Degree of hazard; the programme's rules decide which is which. */
  public enum HazardClass {
    LOW,
    HIGH,
    SEVERE
  }

  /** What the assembly protects. */
  public enum Protection {
    CONTAINMENT,
    ISOLATION
  }

  /** Use of the water downstream. */
  public enum WaterUse {
    DOMESTIC,
    FIRE,
    IRRIGATION,
    INDUSTRIAL,
    MEDICAL,
    COOLING,
    OTHER
  }

  @Override
  public Subject subject() {
    return Subject.site(siteId);
  }
}
