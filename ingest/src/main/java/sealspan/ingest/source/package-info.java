/**
 * From files to drafts, row by row and in constant memory. Whatever a file holds, each row comes
 * out as a draft or with a message that says where it stands, what is wrong and what to do.
 */
package sealspan.ingest.source;
