package sealspan.table;

import sealspan.event.Means;

/**
 * One coefficient of the probability of a fouling failure at a site visit, 1 -
 * exp(-exp(predictor)). Where only one rate for all is known, the coefficients are those that it
 * amounts to, without limits.
 */
public record FoulingCoefficientRow(
    @Means("constant, log exposure years, log rounds, season sine, season cosine, or type=...")
        String name,
    @Means("the coefficient: logarithm of a rate a year, or of a ratio of rates") double value,
    @Means("lower limit, 95 %, allowing for visits to one site being alike") Double lower,
    @Means("upper limit") Double upper) {}
