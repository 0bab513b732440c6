/**
 * Looks for clusters of fouling that people ask for themselves: the pipes that they bring, and the
 * answer and the map of what was found. The rules are those of the study of fouling.
 */
package sealspan.answers.explore;
