package sealspan.assembly;

import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.RepairItem;

/** Which components an action of a repair touches. */
final class ActedOn {
  private ActedOn() {}

  /**
   * Whether an item touches a component. An item on the whole assembly touches every component of
   * it; the assembly as a whole is touched by an item on any tested component, never by one on a
   * shutoff, test cock or body.
   */
  static boolean touches(RepairItem item, ComponentAt at) {
    if (item.at().component() == Component.WHOLE) {
      return true;
    }
    return at.component() == Component.WHOLE
        ? AssemblyParts.isTested(item.at().component())
        : item.at().equals(at);
  }
}
