package sealspan.study;

import java.util.ArrayList;
import java.util.List;
import sealspan.assembly.AssemblyHistory;
import sealspan.assembly.RepairOutcome;
import sealspan.event.Action;
import sealspan.event.PartFitted;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.table.RepairRow;

/** Rows of repairs. */
final class RepairRows {
  private RepairRows() {}

  static List<RepairRow> of(AssemblyHistory history) {
    List<RepairRow> rows = new ArrayList<>(history.repairs().size());
    for (RepairOutcome outcome : history.repairs()) {
      rows.add(row(history.assemblyId(), outcome));
    }
    return rows;
  }

  private static RepairRow row(String assemblyId, RepairOutcome outcome) {
    RepairPerformed repair = (RepairPerformed) outcome.source().event();
    RepairItem item = outcome.item();
    boolean renewed =
        item.action() != null && item.action().sealEffect() == Action.SealEffect.RENEWED;
    return new RepairRow(
        assemblyId,
        outcome.source().id(),
        outcome.number(),
        repair.visit() == null ? null : repair.visit().id(),
        repair.when().day(),
        item.at().text(),
        Text.of(item.mode()),
        Text.of(item.mechanism()),
        Text.of(item.cause()),
        Text.of(item.action()),
        renewed,
        Text.of(item.reason()),
        parts(item.parts()),
        outcome.foundFailed(),
        Text.of(outcome.retest()),
        outcome.nextOn(),
        Text.of(outcome.next()),
        repair.workMinutes());
  }

  /** The parts in words, such as {@code 2 disc (kit 905-111)}; null for none. */
  private static String parts(List<PartFitted> parts) {
    if (parts.isEmpty()) {
      return null;
    }
    StringBuilder words = new StringBuilder();
    for (PartFitted part : parts) {
      if (words.length() > 0) {
        words.append("; ");
      }
      if (part.quantity() != null) {
        words.append(part.quantity()).append(' ');
      }
      words.append(part.kind() == null ? "part" : part.kind());
      if (part.kitNumber() != null) {
        words.append(" (").append(part.kitNumber()).append(')');
      }
    }
    return words.toString();
  }
}
