/**
 * Dated outcomes against dated exposures: windows around exposures, and lags. All take what a unit
 * or a stratum has in common as given, so that it cancels.
 */
package sealspan.stats.exposure;
