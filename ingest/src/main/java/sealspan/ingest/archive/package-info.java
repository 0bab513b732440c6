/** The whole log as files: written, checked, and put back byte for byte. */
package sealspan.ingest.archive;
