package sealspan.event;

/** What a visit cost and what was invoiced for it. */
public record JobCosted(
    @Means("id of the assembly") String assemblyId,
    @Means("day of the job") Moment when,
    @Means("visit id") String visitId,
    @Means("contract id") String contractId,
    @Means("whether the contract covers the job") Boolean covered,
    @Means("labour") Money labour,
    @Means("travel") Money travel,
    @Means("parts") Money parts,
    @Means("amount invoiced") Money invoiced)
    implements AssemblyEvent {

  @Override
  public Subject subject() {
    return Subject.assembly(assemblyId);
  }
}
