/**
 * The wire form: Java records to and from Avro. The schema of a record follows from the record; the
 * committed {@code .avsc} files are held equal to it by a test, and every schema that ever wrote a
 * log is kept so that old bytes decode for ever.
 */
package sealspan.avro;
