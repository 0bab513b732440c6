/**
 * Numerics on arrays and small records: no schema, no stream. Times are whole days; a rate is per
 * day of exposure. Every estimator gives the same bits whatever the order of its input.
 */
package sealspan.stats;
