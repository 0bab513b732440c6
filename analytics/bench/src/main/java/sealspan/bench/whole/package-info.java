/** How fast the whole program is, from files to answers, and how much memory it takes. */
package sealspan.bench.whole;
