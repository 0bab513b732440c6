package sealspan.ingest.validate;

/**
 * A row of cells.
 *
 * @param origin where it stands
 * @param plan what its cells are
 * @param cells the cells as text, as many as the plan has; it is not changed after this
 * @param notation how they are written
 */
public record RowDraft(Origin origin, RowPlan plan, String[] cells, Notation notation)
    implements EventDraft {}
