/** How true the estimators are: seeded studies on practice fleets, run by hand. */
package sealspan.bench.truth;
