/**
 * What one of two actions would have led to, had all cases got it, from records in which somebody
 * chose the action case by case. Nothing here knows the trade.
 */
package sealspan.stats.effect;
