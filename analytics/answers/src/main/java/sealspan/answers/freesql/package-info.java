/**
 * Queries that users write themselves: one SELECT on a snapshot, let through by an allow-list on
 * its parse tree, and run in a process of its own under limits.
 */
package sealspan.answers.freesql;
