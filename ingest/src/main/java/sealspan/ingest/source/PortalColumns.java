package sealspan.ingest.source;

import java.util.List;

/**
 * Columns of the Water Quality Portal's results that are read, found by name and never by place.
 * The first name is that of the physical/chemical profile, the other that of WQX 3.0 where it was
 * seen.
 */
enum PortalColumns {
  TYPE("ActivityTypeCode", "Activity_TypeCode"),
  MEDIUM("ActivityMediaName", "Activity_Media"),
  DAY("ActivityStartDate", "Activity_StartDate"),
  TIME("ActivityStartTime/Time", "Activity_StartTime"),
  ZONE_OF_TIME("ActivityStartTime/TimeZoneCode", "Activity_StartTimeZone"),
  STATION("MonitoringLocationIdentifier", "Location_Identifier"),
  ACTIVITY("ActivityIdentifier", "Activity_ActivityIdentifier"),
  RESULT("ResultIdentifier", "Result_MeasureIdentifier"),
  CONDITION("ResultDetectionConditionText", "Result_ResultDetectionCondition"),
  CHARACTERISTIC("CharacteristicName", "Result_Characteristic"),
  FRACTION("ResultSampleFractionText", "Result_SampleFraction"),
  VALUE("ResultMeasureValue", "Result_Measure"),
  UNIT("ResultMeasure/MeasureUnitCode", "Result_MeasureUnit"),
  STATUS("ResultStatusIdentifier", "Result_MeasureStatusIdentifier"),
  METHOD("ResultAnalyticalMethod/MethodIdentifier", "ResultAnalyticalMethod_Identifier"),
  LIMIT("DetectionQuantitationLimitMeasure/MeasureValue", "DetectionLimit_MeasureA"),
  LIMIT_UNIT("DetectionQuantitationLimitMeasure/MeasureUnitCode", "DetectionLimit_MeasureUnitA"),
  PROVIDER("ProviderName", "ProviderName"),
  /** No column of the portal: a column of ours that somebody has put beside them. */
  ZONE("zone_id", "zone_id");

  private final String profile;
  private final String wqx;

  PortalColumns(String profile, String wqx) {
    this.profile = profile;
    this.wqx = wqx;
  }

  String profileName() {
    return profile;
  }

  /** Whether a header is that of a table of water results. */
  static boolean areIn(List<String> header) {
    return CHARACTERISTIC.in(header) >= 0 && DAY.in(header) >= 0 && VALUE.in(header) >= 0;
  }

  /** Place of the column in a header; -1 where it is not there. */
  int in(List<String> header) {
    for (int i = 0; i < header.size(); i++) {
      // Some programs write a dot or an underscore for the slash.
      String name = header.get(i).replace('.', '/');
      if (name.equalsIgnoreCase(profile)
          || name.equalsIgnoreCase(wqx)
          || name.equalsIgnoreCase(profile.replace('/', '_'))) {
        return i;
      }
    }
    return -1;
  }
}
