package sealspan.answers;

/** What the study works out after the SQL of a question; {@code -- study: ...} in its header. */
sealed interface StudyCall permits ShareCall, TimePerEventCall, ForecastCall, DecisionCall {
  /** Reads the header. */
  static StudyCall of(String header) {
    if (header.equals(DecisionCall.HEADER)) {
      return new DecisionCall();
    }
    if (header.startsWith("time per event ")) {
      return TimePerEventCall.of(header);
    }
    return header.startsWith("forecast ") ? ForecastCall.of(header) : ShareCall.of(header);
  }

  /** What becomes of the table. */
  ResultTable applyTo(ResultTable table);
}
