package sealspan.study.fouling;

/** Something about the water that may have acted between two days in a zone. */
interface WaterExposure {
  /** Its name in tables. */
  String text();

  /** Whether it either came or did not; else it is a number, the logarithm of a quality. */
  boolean isEvent();

  /**
   * How it acted after one day and up to another, that day included: 1 or 0 for events, the base-2
   * logarithm of a mean for a quality; null where nothing is known.
   */
  Double between(String zoneId, int afterDay, int lastDay);

  /**
   * The days on which what acted between began, each standing for one event; events of a kind that
   * began on one day in several zones are one.
   */
  int[] daysBetween(String zoneId, int afterDay, int lastDay);

  /** What tests have in common that share the last event up to a day; equal texts share it. */
  String shared(String zoneId, int day);
}
