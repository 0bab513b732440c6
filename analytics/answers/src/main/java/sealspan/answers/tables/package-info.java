/**
 * The tables of the answers. They derive from the row records alone: a record is a table, its
 * fields are the columns, the meaning of a field is the comment of its column.
 */
package sealspan.answers.tables;
