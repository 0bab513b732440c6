package sealspan.event;

/**
 * One installation or compliance check of a report.
 *
 * @param name what was checked, in the words of the form (such as air gap under relief valve)
 * @param met whether it was met
 */
public record InstallationCheck(
    @Means("what was checked") String name, @Means("whether it was met") boolean met) {}
