package org.culvert.geo;

/** A point of a grid in its unit, mostly metres, easting always first whatever the grid's own order of axes. */
public record EastingNorthing(double easting, double northing) {}
