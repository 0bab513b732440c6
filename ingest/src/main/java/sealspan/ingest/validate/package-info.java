/**
 * From what a row says to events, or to a list of what is wrong with it. Everything here is a pure
 * function of the row, the code lists and a few settings; no row is judged by what other rows say.
 */
package sealspan.ingest.validate;
