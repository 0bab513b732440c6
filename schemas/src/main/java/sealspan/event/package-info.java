/**
 * What happened to an assembly, a site, a zone, a gauge or a tester, as immutable records.
 *
 * <p>One convention everywhere: a component that is {@code null} was <em>not recorded</em> by the
 * source. It never means zero, no or passed. Lists are never null; an empty list means nothing was
 * recorded there. Days are days of the site's calendar. A value that a person wrote down is kept as
 * text, exactly as entered, beside its unit.
 */
package sealspan.event;
