package sealspan.assembly;

import sealspan.event.SiteDescribed.HazardClass;
import sealspan.event.SiteDescribed.Protection;
import sealspan.event.SiteDescribed.WaterUse;

/**
 * What is known of the place of an assembly as of a day; null where not recorded.
 *
 * @param siteId the site
 * @param siteLabel label of the premises
 * @param positionId position in the pipework
 * @param zoneId water zone
 * @param jurisdiction jurisdiction whose criteria apply
 * @param hazard hazard class
 * @param protection containment or isolation
 * @param use use of the water
 * @param ownerId owner
 * @param latitude WGS84, degrees
 * @param longitude WGS84, degrees
 */
public record Place(
    String siteId,
    String siteLabel,
    String positionId,
    String zoneId,
    String jurisdiction,
    HazardClass hazard,
    Protection protection,
    WaterUse use,
    String ownerId,
    Double latitude,
    Double longitude) {}
