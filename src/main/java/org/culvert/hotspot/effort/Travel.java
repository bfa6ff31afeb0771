package org.culvert.hotspot.effort;

/** How a survey was made. */
public enum Travel {
    motorVehicle,
    bicycle,
    foot,
    other
}
