/**
 * The background engine of one data folder: it runs the broker, the jobs and the one writer of the
 * answers. Commands find it by what it writes down in the folder, and ask things of it by letters.
 */
package sealspan.app.engine;
