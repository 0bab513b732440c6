package sealspan.event;

import java.time.LocalDate;

/** A certificate of a tester; persons appear by id only. */
public record TesterCertified(
    @Means("tester id") String testerId,
    @Means("first day on which the certificate is valid") Moment when,
    @Means("last day on which it is valid") LocalDate validUntil,
    @Means("certificate number") String certificateNumber,
    @Means("certifying body") String authority,
    @Means("utility where the tester is registered") String registeredWith,
    @Means("firm id") String firmId)
    implements AssemblyEvent {

  @Override
  public Subject subject() {
    return Subject.tester(testerId);
  }
}
