package sealspan.answers;

/**
 * How a question takes a filter.
 *
 * @param filter the filter
 * @param need whether it has to be given
 * @param standard value where none is given, as typed; null for "everything"
 */
public record FilterUse(Filter filter, Need need, String standard) {
  /** Whether a filter has to be given. */
  public enum Need {
    REQUIRED,
    OPTIONAL
  }

  /** Reads the form {@code assembly, required} or {@code limit = 20} or {@code type}. */
  static FilterUse of(String header) {
    if (header.endsWith(", required")) {
      String label = header.substring(0, header.length() - ", required".length());
      return new FilterUse(Filter.ofLabel(label.strip()), Need.REQUIRED, null);
    }
    String[] parts = header.split("=", 2);
    String standard = parts.length == 2 ? parts[1].strip() : null;
    return new FilterUse(Filter.ofLabel(parts[0].strip()), Need.OPTIONAL, standard);
  }
}
