package sealspan.study.practice;

import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyType;
import sealspan.study.practice.Draws.Purpose;

/** One assembly of the invented fleet: what it is, and the hidden state of its components. */
final class PracticeUnit {
  private static final String[] SMALL = {"0.75", "1", "1.5", "2"};
  private static final String[] LARGE = {"2.5", "3", "4", "6", "8"};
  private static final String[] MAKERS = {"Maker A", "Maker B", "Maker C"};

  final PracticeParameters parameters;
  final int position;
  final int number;
  final AssemblyType type;
  final String sizeInch;
  final String maker;
  final double frailty;
  final double sizeRatio;
  final int installDay;
  final FoulingRate foulingRate;
  final List<PartLife> parts = new ArrayList<>();

  /** The last round that passed, which a tester may copy; null for none. */
  TestRound lastPassed;

  /** The round after which it was left failed; null where it was not. */
  TestRound leftFailed;

  /** Day of the last scheduled rebuild, or of installation. */
  int rebuiltOn;

  PracticeUnit(
      PracticeParameters parameters,
      int position,
      int number,
      int installDay,
      FoulingRate foulingRate) {
    this.parameters = parameters;
    this.position = position;
    this.number = number;
    this.installDay = installDay;
    this.rebuiltOn = installDay;
    this.foulingRate = foulingRate;
    this.type = typeAt(parameters, position);
    Draws lasting = Draws.of(parameters.seed(), Purpose.POSITION, position, 2, 0);
    boolean large = isDetector(type) || canBeLarge(type) && lasting.happens(0.3);
    this.sizeInch =
        large ? LARGE[lasting.whole(isDetector(type) ? 2 : 0, 4)] : SMALL[lasting.whole(0, 3)];
    this.sizeRatio = large ? parameters.wear().largeSizeRatio() : 1;
    Draws own = Draws.of(parameters.seed(), Purpose.UNIT, position, number, 0);
    this.maker = MAKERS[own.whole(0, 2)];
    this.frailty = own.gammaOfMeanOne(parameters.wear().frailtyCv());
    List<PartPlan> plans = PartPlan.of(type);
    for (int i = 0; i < plans.size(); i++) {
      PartLife part = new PartLife(this, i, plans.get(i));
      part.begin(installDay, 0, PartLife.Hold.HELD);
      parts.add(part);
    }
  }

  /** The type at a position; an assembly is replaced by one of its type. */
  static AssemblyType typeAt(PracticeParameters parameters, int position) {
    if (parameters.onlyType() != null) {
      return parameters.onlyType();
    }
    Draws draws = Draws.of(parameters.seed(), Purpose.POSITION, position, 0, 0);
    return switch (draws.place(0.35, 0.33, 0.12, 0.03, 0.06, 0.04, 0.02, 0.01, 0.02, 0.02)) {
      case 0 -> AssemblyType.DC;
      case 1 -> AssemblyType.RP;
      case 2 -> AssemblyType.PVB;
      case 3 -> AssemblyType.SVB;
      case 4 -> AssemblyType.DCDA;
      case 5 -> AssemblyType.DCDA_II;
      case 6 -> AssemblyType.RPDA;
      case 7 -> AssemblyType.RPDA_II;
      case 8 -> AssemblyType.AVB;
      default -> AssemblyType.AG;
    };
  }

  static boolean isDetector(AssemblyType type) {
    return switch (type) {
      case DCDA, DCDA_II, RPDA, RPDA_II -> true;
      default -> false;
    };
  }

  private static boolean canBeLarge(AssemblyType type) {
    return type == AssemblyType.DC || type == AssemblyType.RP;
  }

  String id() {
    return Names.assembly(position, number);
  }

  String model() {
    return type.name() + "-" + maker.charAt(maker.length() - 1);
  }

  String serial() {
    return "SN" + Names.digits(position) + "-" + (number + 1);
  }

  Draws draws(Purpose purpose, long what, long counter) {
    return Draws.of(parameters.seed(), purpose, position, number * 1_000L + what, counter);
  }

  /** Age of the unit on a day, years. */
  double ageYears(int day) {
    return (day - installDay) / PracticeParameters.DAYS_A_YEAR;
  }
}
