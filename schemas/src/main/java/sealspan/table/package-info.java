/**
 * The rows of the result tables. Each record is one table: its schema, its topic form and its
 * definition in the answers derive from it. Rows that change together travel together, in one
 * bundle keyed by what they are about, so that no reader sees half a change; a bundle is absolute
 * and replaces the earlier bundle of its key.
 */
package sealspan.table;
