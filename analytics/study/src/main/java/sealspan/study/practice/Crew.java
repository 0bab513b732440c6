package sealspan.study.practice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sealspan.event.AssemblyEvent;
import sealspan.event.GaugeCalibrated;
import sealspan.event.Moment;
import sealspan.event.Quantity;
import sealspan.event.TesterCertified;
import sealspan.event.Unit;
import sealspan.study.practice.Draws.Purpose;

/** One tester with one gauge: certificates of three years, calibrations of one year, and habits. */
final class Crew {
  private static final int CERTIFICATE_DAYS = 1096;
  private static final int CALIBRATION_DAYS = 365;

  private final PracticeParameters parameters;
  private final int tester;
  private final int certificateOffset;
  private final int calibrationOffset;
  private final boolean stopping;
  private final boolean copying;

  Crew(PracticeParameters parameters, int tester) {
    this.parameters = parameters;
    this.tester = tester;
    Draws draws = Draws.of(parameters.seed(), Purpose.CREW, tester, 0, 0);
    this.certificateOffset = draws.whole(0, CERTIFICATE_DAYS - 1);
    this.calibrationOffset = draws.whole(0, CALIBRATION_DAYS - 1);
    this.stopping = draws.happens(parameters.reports().testersStopping());
    this.copying = draws.happens(parameters.reports().testersCopying());
  }

  /** The crew that looks after a position. */
  static int of(PracticeParameters parameters, int position) {
    return position / parameters.town().positionsPerTester();
  }

  int tester() {
    return tester;
  }

  String testerId() {
    return Names.tester(tester);
  }

  String gaugeId() {
    return Names.gauge(tester);
  }

  /** Whether the tester ends a test at the first deficiency. */
  boolean stopping() {
    return stopping;
  }

  /** Whether the tester copies readings of the year before, at some visits. */
  boolean copying() {
    return copying;
  }

  /** Number of the newest certificate on a day, which may have lapsed. */
  int certificate(int day) {
    int number = Math.floorDiv(day - certificateOffset, CERTIFICATE_DAYS);
    return day < certifiedOn(number) ? number - 1 : number;
  }

  private int certifiedOn(int number) {
    Draws draws = Draws.of(parameters.seed(), Purpose.CERTIFICATE, tester, number, 0);
    boolean lapsed = draws.happens(parameters.reports().certificateLapsed());
    return certificateOffset + number * CERTIFICATE_DAYS + (lapsed ? draws.whole(1, 60) : 0);
  }

  String certificateNumber(int number) {
    return "C" + Names.digits(tester) + "-" + number;
  }

  /** Last day of a certificate. */
  LocalDate certificateValidUntil(int number) {
    return LocalDate.ofEpochDay(certificateOffset + (number + 1L) * CERTIFICATE_DAYS - 1);
  }

  /** Number of the newest calibration on a day. */
  int calibration(int day) {
    int number = Math.floorDiv(day - calibrationOffset, CALIBRATION_DAYS);
    return day < calibrationDay(number) ? number - 1 : number;
  }

  /** Day of a calibration, counted from 1970-01-01. */
  int calibrationDay(int number) {
    Draws draws = Draws.of(parameters.seed(), Purpose.GAUGE, tester, number, 0);
    boolean lapsed = draws.happens(parameters.reports().gaugeLapsed());
    return calibrationOffset + number * CALIBRATION_DAYS + (lapsed ? draws.whole(1, 45) : 0);
  }

  /** True bias of the gauge from one calibration to the next, psi. */
  double biasPsi(int calibration) {
    Draws draws = Draws.of(parameters.seed(), Purpose.GAUGE, tester, calibration, 1);
    return parameters.readings().gaugeBiasSdPsi() * draws.normal();
  }

  /** Certificates and calibrations that the record holds. */
  List<AssemblyEvent> events() {
    List<AssemblyEvent> events = new ArrayList<>();
    for (int i = certificate(parameters.beginDay()); certifiedOn(i) < parameters.endDay(); i++) {
      events.add(
          new TesterCertified(
              testerId(),
              Moment.on(LocalDate.ofEpochDay(certifiedOn(i))),
              certificateValidUntil(i),
              certificateNumber(i),
              "Practice Board of Testers",
              parameters.town().source(),
              "F" + Names.digits(tester / 3)));
    }
    for (int i = calibration(parameters.beginDay()); calibrationDay(i) < parameters.endDay(); i++) {
      events.add(
          new GaugeCalibrated(
              gaugeId(),
              Moment.on(LocalDate.ofEpochDay(calibrationDay(i))),
              LocalDate.ofEpochDay(calibrationDay(i) + CALIBRATION_DAYS - 1L),
              null,
              new Quantity("0.1", Unit.PSI),
              "L01",
              true));
    }
    return events;
  }
}
