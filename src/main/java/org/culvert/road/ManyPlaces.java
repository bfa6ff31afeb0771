package org.culvert.road;

/** Understands many places at once, as {@link PlaceReading} understands each of them, without asking the database for each. */
public interface ManyPlaces {
    /** The current roads and the region, as they are now. */
    PlacesOnRoads open();
}
