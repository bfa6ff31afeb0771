package org.culvert.road.network;

/** On which side of a road something lies, for one who looks along increasing chainage. */
public enum Side {
    LEFT,
    RIGHT,
    ON
}
