package org.culvert.hotspot.stats;

/**
 * How an event's place came to be written down.
 *
 * @param roundingMetres the step to which the distance along the road was rounded (1000 for whole kilometres), 0 if it was
 *     not
 * @param spreadMetres how far the true place may lie from the recorded one along the road, to either side, 0 if it is
 *     exact
 */
public record Recording(double roundingMetres, double spreadMetres) {
    public static final Recording EXACT = new Recording(0, 0);

    public Recording {
        if (!(roundingMetres >= 0) || !(spreadMetres >= 0)) {
            throw new IllegalArgumentException("rounding and spread are lengths in metres, zero or more");
        }
    }
}
