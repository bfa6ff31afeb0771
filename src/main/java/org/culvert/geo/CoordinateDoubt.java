package org.culvert.geo;

/**
 * A legal position that lies outside the region, while another reading of the same numbers lies inside it. To be shown to
 * a person with both readings; nothing is corrected by itself.
 *
 * @param reason what the other reading assumes, as a sentence
 * @param otherReading the position by the other reading, inside the region
 */
public record CoordinateDoubt(String reason, Position otherReading) {}
