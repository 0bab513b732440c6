package sealspan.ingest.validate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sealspan.event.Action;
import sealspan.event.Cause;
import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.FailureMode;
import sealspan.event.Mechanism;
import sealspan.event.Moment;
import sealspan.event.PartFitted;
import sealspan.event.RepairItem;
import sealspan.event.RepairPerformed;
import sealspan.event.ReplacementReason;
import sealspan.event.Visit;

/** Repairs from rows. */
final class RepairRows {
  private static final Column REPORT_NUMBER = Columns.named("report_number");
  private static final Column CREW = Columns.named("crew_ids");
  private static final Column MINUTES = Columns.named("work_minutes");
  private static final Column WARRANTY = Columns.named("warranty");
  private static final Column REMARKS = Columns.named("remarks");
  private static final Map<Component, PartColumns> PARTS = new EnumMap<>(Component.class);

  static {
    for (Component component : Columns.partNames().keySet()) {
      PARTS.put(component, PartColumns.of(component));
    }
  }

  private RepairRows() {}

  /** The columns that tell of one part. */
  private record PartColumns(
      Column action,
      Column mode,
      Column mechanism,
      Column cause,
      Column reason,
      Column fitted,
      Column kit,
      Column kitMaker,
      Column material,
      Column lot,
      Column quantity,
      Column unitPrice,
      Column supplier) {

    static PartColumns of(Component part) {
      return new PartColumns(
          Columns.ofPart(part, "action"),
          Columns.ofPart(part, "mode"),
          Columns.ofPart(part, "mechanism"),
          Columns.ofPart(part, "cause"),
          Columns.ofPart(part, "reason"),
          Columns.ofPart(part, "fitted"),
          Columns.ofPart(part, "kit"),
          Columns.ofPart(part, "kit_maker"),
          Columns.ofPart(part, "material"),
          Columns.ofPart(part, "lot"),
          Columns.ofPart(part, "quantity"),
          Columns.ofPart(part, "unit_price"),
          Columns.ofPart(part, "supplier_id"));
    }

    boolean tells(Fields line) {
      return line.has(action)
          || line.has(mode)
          || line.has(mechanism)
          || line.has(cause)
          || line.has(reason)
          || tellsOfFitting(line);
    }

    boolean tellsOfFitting(Fields line) {
      return line.has(fitted)
          || line.has(kit)
          || line.has(kitMaker)
          || line.has(material)
          || line.has(lot)
          || line.has(quantity)
          || line.has(unitPrice)
          || line.has(supplier);
    }
  }

  /** A repair. */
  static RepairPerformed of(Fields repair, String assemblyId, Moment when, Visit visit) {
    List<RepairItem> items = new ArrayList<>(4);
    for (BlockPlan.LineCells line : repair.block().lines()) {
      Fields fields = repair.of(line);
      for (Map.Entry<Component, PartColumns> part : PARTS.entrySet()) {
        if (part.getValue().tells(fields)) {
          addItems(items, fields, line.at(part.getKey()), part.getValue());
        }
      }
    }
    return new RepairPerformed(
        assemblyId,
        when,
        visit,
        repair.text(REPORT_NUMBER),
        items,
        repair.list(CREW),
        repair.whole(MINUTES, 0, 100_000),
        repair.yesNo(WARRANTY),
        repair.text(REMARKS));
  }

  private static void addItems(
      List<RepairItem> items, Fields fields, ComponentAt at, PartColumns columns) {
    FailureMode mode = fields.code(columns.mode(), Codes.MODE);
    Mechanism mechanism = fields.code(columns.mechanism(), Codes.MECHANISM);
    Cause cause = fields.code(columns.cause(), Codes.CAUSE);
    ReplacementReason reason = fields.code(columns.reason(), Codes.REASON);
    List<PartFitted> fitted = fitted(fields, columns);
    List<Action> actions = actions(fields, columns.action());
    int replacing = replacing(actions);
    for (int i = 0; i < actions.size(); i++) {
      Action action = actions.get(i);
      boolean renews = action.sealEffect() == Action.SealEffect.RENEWED;
      items.add(
          new RepairItem(
              at,
              mode,
              mechanism,
              cause,
              action,
              renews ? reason : null,
              i == replacing ? fitted : List.of()));
    }
    if (actions.isEmpty()) {
      items.add(new RepairItem(at, mode, mechanism, cause, null, reason, fitted));
    }
  }

  /** The action that the fitted part belongs to: the first that fits one, else the first. */
  private static int replacing(List<Action> actions) {
    for (int i = 0; i < actions.size(); i++) {
      switch (actions.get(i)) {
        case NONE, FLUSHED, CLEANED, DISC_TURNED, ADJUSTED, BODY_REPAIRED -> {
          // Nothing is fitted by these.
        }
        default -> {
          return i;
        }
      }
    }
    return 0;
  }

  private static List<Action> actions(Fields fields, Column column) {
    String text = fields.text(column);
    if (text == null) {
      return List.of();
    }
    Action whole = Codes.ACTION.parse(text);
    if (whole != null) {
      return List.of(whole);
    }
    List<Action> actions = new ArrayList<>(2);
    int begin = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || isBetween(text.charAt(i))) {
        String one = text.substring(begin, i).trim();
        begin = i + 1;
        Action action = one.isEmpty() ? null : fields.code(column, one, Codes.ACTION);
        if (action != null) {
          actions.add(action);
        }
      }
    }
    return actions;
  }

  private static boolean isBetween(char c) {
    return c == '+' || c == ';' || c == ',' || c == '|' || c == '&';
  }

  private static List<PartFitted> fitted(Fields fields, PartColumns columns) {
    if (!columns.tellsOfFitting(fields)) {
      return List.of();
    }
    return List.of(
        new PartFitted(
            fields.text(columns.fitted()),
            fields.text(columns.kit()),
            fields.text(columns.kitMaker()),
            fields.text(columns.material()),
            fields.text(columns.lot()),
            fields.whole(columns.quantity(), 1, 999),
            fields.money(columns.unitPrice()),
            fields.text(columns.supplier())));
  }
}
