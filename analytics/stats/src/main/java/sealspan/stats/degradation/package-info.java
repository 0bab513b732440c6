/**
 * Readings that drift towards a limit: a true level that wanders (Wiener process), read by a gauge
 * with an error of its own and one that it keeps from one calibration to the next. Levels are in
 * the unit of the readings, times in whole days.
 */
package sealspan.stats.degradation;
