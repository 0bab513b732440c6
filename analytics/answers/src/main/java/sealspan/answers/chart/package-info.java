/** Answers drawn: as text for the terminal, and as SVG. */
package sealspan.answers.chart;
