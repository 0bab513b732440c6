package sealspan.answers.chart;

import java.util.List;
import java.util.Locale;

/** The marks that our pictures are made of, as text of SVG 1.1. */
final class SvgPage {
  /** Told apart by people with colour-blindness too: Okabe and Ito 2008, from memory. */
  static final String[] COLOURS = {
    "#0072b2", "#d55e00", "#009e73", "#cc79a7", "#e69f00", "#56b4e9"
  };

  private final int width;
  private final StringBuilder out = new StringBuilder();

  SvgPage(int width) {
    this.width = width;
  }

  StringBuilder out() {
    return out;
  }

  /** Opens the picture: white, with a title for those who cannot see it. */
  void begin(int height, String title) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"")
        .append(width + "\" height=\"" + height + "\" viewBox=\"0 0 " + width + " " + height)
        .append("\" font-family=\"sans-serif\" font-size=\"12\">\n");
    out.append("<title>").append(escaped(title)).append("</title>\n");
    out.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
  }

  /** Closes it and gives the whole text. */
  String end() {
    return out.append("</svg>\n").toString();
  }

  void line(double x1, double y1, double x2, double y2, String colour) {
    out.append("<line x1=\"" + number(x1) + "\" y1=\"" + number(y1) + "\" x2=\"" + number(x2))
        .append("\" y2=\"" + number(y2) + "\" stroke=\"" + colour + "\"/>\n");
  }

  /** A disc; more stands for further attributes. */
  void circle(double x, double y, double radius, String more) {
    out.append("<circle cx=\"" + number(x) + "\" cy=\"" + number(y) + "\" r=\"" + number(radius))
        .append("\" " + more + "/>\n");
  }

  /** Until it is ended, nothing is drawn outside of a part of the page. */
  void beginWindow(double x, double y, double wide, double high) {
    String sides = number(wide) + "\" height=\"" + number(high);
    out.append("<svg x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + sides)
        .append("\" viewBox=\"" + number(x) + " " + number(y) + " ")
        .append(number(wide) + " " + number(high) + "\">\n");
  }

  void endWindow() {
    out.append("</svg>\n");
  }

  /** A closed line through points {x, y}. */
  void polygon(List<double[]> points, String more) {
    out.append("<polygon points=\"");
    for (double[] p : points) {
      out.append(number(p[0]) + "," + number(p[1]) + " ");
    }
    out.append("\" " + more + "/>\n");
  }

  void rect(double x, double y, double wide, double high, String more) {
    out.append("<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(wide))
        .append("\" height=\"" + number(high) + "\" " + more + "/>\n");
  }

  void text(double x, double y, String anchor, int size, String text) {
    out.append("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor)
        .append("\" font-size=\"" + size + "\" xml:space=\"preserve\">")
        .append(escaped(text))
        .append("</text>\n");
  }

  static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** Characters that XML 1.0 forbids are left out. */
  static String escaped(String text) {
    return text.replaceAll("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\ufffe\\uffff]", "")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
  }
}
