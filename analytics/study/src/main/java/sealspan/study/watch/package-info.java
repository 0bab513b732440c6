/**
 * The watch over fouling failures as they become known: which tests enter it and when, the models
 * and zones that were frozen before, its alarms as they were known and as they hold now. Pure
 * functions of events and of what was frozen.
 */
package sealspan.study.watch;
