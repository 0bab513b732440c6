/** How fast the estimators are: JMH benchmarks, run by hand, never part of the tests. */
package sealspan.bench.speed;
