/**
 * The Flink jobs. Operators read state, call a function of {@code sealspan.study}, and write state;
 * what the results mean is decided there.
 *
 * <p>{@link sealspan.jobs.HistoriesGraph} runs for ever and keeps the rows of every assembly and
 * zone up to date. {@link sealspan.jobs.FittingGraph} runs at a cut and ends.
 */
package sealspan.jobs;
