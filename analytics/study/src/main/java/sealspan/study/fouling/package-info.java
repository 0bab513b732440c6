/**
 * Fouling failures: what counts as one, how likely one is at a site visit whatever the place, and
 * where and when there were more than that. Pure functions of the rows of assemblies and zones.
 */
package sealspan.study.fouling;
