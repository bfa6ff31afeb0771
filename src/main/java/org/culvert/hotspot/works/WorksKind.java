package org.culvert.hotspot.works;

/** What was built or done against collisions. */
public enum WorksKind {
    fence,
    crossing,
    fenceAndCrossing,
    animalDetection,
    signs,
    reflectors,
    lowerSpeed,
    other
}
