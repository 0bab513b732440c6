package sealspan.event;

import java.util.List;

/**
 * One action on one component. Mode, mechanism, cause and action are kept apart, as in ISO 14224.
 */
public record RepairItem(
    @Means("the component") ComponentAt at,
    @Means("what the test saw") FailureMode mode,
    @Means("what was found on opening") Mechanism mechanism,
    @Means("why it came about") Cause cause,
    @Means("what was done") Action action,
    @Means("why a seal was replaced") ReplacementReason reason,
    @Means("parts fitted") List<PartFitted> parts) {

  public RepairItem {
    if (at == null) {
      throw new IllegalArgumentException("A repair action needs its component.");
    }
    parts = List.copyOf(parts);
  }
}
