/** The commands that people type. */
package sealspan.app.cli;
