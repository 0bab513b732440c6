package sealspan.assembly;

import sealspan.event.ComponentAt;
import sealspan.event.Measure;
import sealspan.event.Reading;

/**
 * A reading that tells how a component drifts towards its limit.
 *
 * @param reading the reading as entered
 * @param at the component
 * @param measure what was measured
 * @param run number of the stretch of readings between which nobody acted on the component, from 1
 * @param limitPsi least value that passes
 * @param gaugeErrorPsi greatest error of the gauge; null where no rule gives one
 * @param stepPsi smallest step that it was read to
 * @param gaugePeriod readings with the same text were made by one gauge between two calibrations
 */
public record RunReading(
    Reading reading,
    ComponentAt at,
    Measure measure,
    int run,
    double limitPsi,
    Double gaugeErrorPsi,
    double stepPsi,
    String gaugePeriod) {}
