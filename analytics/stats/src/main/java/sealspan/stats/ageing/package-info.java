/** Ageing of units that are repaired in place: virtual age, and what is left of it after repair. */
package sealspan.stats.ageing;
