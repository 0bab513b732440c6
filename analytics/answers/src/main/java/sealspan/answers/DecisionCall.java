package sealspan.answers;

import java.util.ArrayList;
import java.util.List;
import sealspan.study.CleanOrRenew;

/**
 * Whether a new seal pays, row by row: from the columns difference, lower and upper, extra and
 * revisit into the columns that the SQL left empty.
 */
record DecisionCall() implements StudyCall {
  /** Header text. */
  static final String HEADER = "clean or renew";

  @Override
  public ResultTable applyTo(ResultTable table) {
    List<List<Object>> rows = new ArrayList<>();
    for (List<Object> row : table.rows()) {
      List<Object> filled = new ArrayList<>(row);
      Double difference = number(table, row, "difference");
      double extra = number(table, row, "extra_cost");
      double revisit = number(table, row, "revisit_cost");
      if (!(extra > 0 && revisit > 0)) {
        throw new AnswersException("The costs --extra and --revisit are above 0.");
      }
      if (difference != null) {
        CleanOrRenew decision =
            CleanOrRenew.of(
                difference,
                number(table, row, "lower"),
                number(table, row, "upper"),
                extra,
                revisit);
        filled.set(table.indexOf("break_even_revisit"), decision.breakEvenRevisit());
        filled.set(table.indexOf("p_new_seal_cheaper"), decision.probabilityRenewalPays());
        filled.set(table.indexOf("expected_saving"), decision.expectedSaving());
        filled.set(table.indexOf("expected_regret"), decision.expectedRegret());
        filled.set(table.indexOf("verdict"), decision.verdict());
      }
      rows.add(filled);
    }
    return table.withRows(rows);
  }

  private static Double number(ResultTable table, List<Object> row, String column) {
    Object value = row.get(table.indexOf(column));
    return value == null ? null : ((Number) value).doubleValue();
  }
}
