/**
 * The rules of the trade, as pure functions of events: what an assembly is made of, which limits
 * apply, how a round is judged, and what a history says. A fold never depends on the order in which
 * events arrived, nor on their repetition. Imports {@code sealspan.event} only.
 */
package sealspan.assembly;
