/**
 * Questions and their answers, read from published snapshots. A question is one file of SQL in
 * {@code resources/sealspan/answers/questions}; the engine need not run to ask it.
 */
package sealspan.answers;
