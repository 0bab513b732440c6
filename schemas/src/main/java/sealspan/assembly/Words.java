package sealspan.assembly;

import sealspan.event.Component;
import sealspan.event.ComponentAt;
import sealspan.event.ComponentAt.Line;
import sealspan.event.Measure;
import sealspan.event.Observation;
import sealspan.event.Quantity;

/** Components, readings and observations in the words of the trade. */
final class Words {
  private Words() {}

  static String of(ComponentAt at) {
    String name = of(at.component());
    if (at.line() == Line.BYPASS) {
      return "bypass " + name;
    }
    return at.lineNumber() == 1 ? name : "mainline " + at.lineNumber() + " " + name;
  }

  private static String of(Component component) {
    return switch (component) {
      case CHECK1 -> "check 1";
      case CHECK2 -> "check 2";
      case RELIEF_VALVE -> "relief valve";
      case AIR_INLET -> "air inlet";
      case SHUTOFF1 -> "shutoff 1";
      case SHUTOFF2 -> "shutoff 2";
      case TEST_COCKS -> "test cocks";
      case BODY -> "body";
      case BYPASS_METER -> "bypass meter";
      case AIR_GAP -> "air gap";
      case WHOLE -> "whole assembly";
    };
  }

  static String of(Observation observation) {
    return switch (observation) {
      case MEASURED -> "measured";
      case CLOSED_TIGHT -> "closed tight";
      case LEAKED -> "leaked";
      case OPENED -> "opened";
      case DID_NOT_OPEN -> "did not open";
      case NOT_TESTED -> "not tested";
    };
  }

  static String of(Quantity quantity) {
    return quantity.entered() + " " + ReadingUnits.words(quantity.unit());
  }

  /** What a component did with a measured number, such as {@code held}. */
  static String verb(Measure measure) {
    return switch (measure) {
      case DIRECTION_OF_FLOW, STATIC_DROP, BACKPRESSURE_TIGHTNESS, TIGHTNESS -> "held";
      case OPENING_POINT, FULL_OPENING -> "opened at";
      case BUFFER, METER_REGISTERS, SEPARATION -> "read";
    };
  }
}
