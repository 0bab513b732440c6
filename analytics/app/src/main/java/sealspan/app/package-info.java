/** The program: its entry, its commands ({@code cli}) and its background engine. */
package sealspan.app;
