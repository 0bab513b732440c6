/**
 * An invented fleet with known true values, for practice, for measuring speed and for holding
 * estimators to a truth. Everything in it is made up: the town, the makers, the money.
 *
 * <p>Every draw has a generator of its own, keyed by what it is for (which position, which visit,
 * which purpose). So the fleet depends on its parameters alone, not on the order or the number of
 * threads that make it, and a fleet of 10 is the beginning of a fleet of 100.
 */
package sealspan.study.practice;
