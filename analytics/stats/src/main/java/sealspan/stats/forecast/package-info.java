/** How good probabilities were that were said beforehand, once it is known what happened. */
package sealspan.stats.forecast;
