/** Generalised linear models: tests that fail or pass, and counts, explained by columns. */
package sealspan.stats.regression;
