package org.culvert.road;

/** Understands a place however it is said, and saves nothing. */
public interface PlaceReading {
    /**
     * @throws org.culvert.platform.InvalidException naming the field below {@code place}, what was wrong, what would be
     *     right, and the other reading where coordinates look swapped; never corrected silently
     */
    PlaceUnderstood understand(PlaceAsGiven given);
}
