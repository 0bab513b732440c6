package sealspan.table;

import sealspan.event.Means;

/** One rate of the lattice on which rates are compared. */
public record RateNodeRow(
    @Means("stratum") String stratum,
    @Means("which of several equally credible priors, from 0") int alternative,
    @Means("place on the lattice, from 0; outside of it only for the fleet") int node,
    @Means("rate, failures a year") double perYear,
    @Means("mass of the prior; none outside of its lattice") Double mass,
    @Means("ranked assemblies expected here, in 2^-40; only with alternative 0") Long fleetMass,
    @Means("sum over them of the squared probability of a higher rate, in 2^-40")
        Long fleetSquare) {}
