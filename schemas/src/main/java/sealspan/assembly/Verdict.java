package sealspan.assembly;

import java.util.List;
import sealspan.event.ComponentAt;

/**
 * The judgement of one test round by its readings. The verdict as issued is kept in the event.
 *
 * @param performance of the assembly; NOT_JUDGED and UNKNOWN both leave it undecided
 * @param leftAs what the readings say of the state in which it was left; other than the performance
 *     only where it was flushed to pass
 * @param installation whether the report's installation checks were met; NOT_JUDGED without any
 * @param test whether the round was a test at all
 * @param components the tested components, mainlines first
 * @param readings the readings in the order of the report
 * @param reasons why, in words
 */
public record Verdict(
    Result performance,
    Result leftAs,
    Result installation,
    Testability test,
    List<ComponentResult> components,
    List<JudgedReading> readings,
    List<String> reasons) {

  /** Whether a round was a test. */
  public enum Testability {
    TESTED,
    /** The type is not field tested, or this unit could not be. */
    NOT_TESTABLE
  }

  /** What the round says of a component; null where it is no tested part of the assembly. */
  public ComponentResult of(ComponentAt at) {
    for (ComponentResult component : components) {
      if (component.at().equals(at)) {
        return component;
      }
    }
    return null;
  }

  /** Whether any reading lies within the gauge's error of its limit: a label, never a verdict. */
  public boolean marginal() {
    for (ComponentResult component : components) {
      if (component.marginal()) {
        return true;
      }
    }
    return false;
  }
}
