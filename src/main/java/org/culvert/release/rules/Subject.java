package org.culvert.release.rules;

/**
 * The animal, as far as rules ask.
 *
 * @param scientificName its taxon, at whatever rank it was identified
 * @param taxonGroup key of the group the job treats alike
 * @param introduced whether its kind is introduced here
 * @param orphan whether it came as dependent young
 * @param hatchling whether it hatched in care
 */
public record Subject(
        String scientificName,
        String taxonGroup,
        boolean introduced,
        boolean orphan,
        boolean hatchling,
        Origin origin) {}
