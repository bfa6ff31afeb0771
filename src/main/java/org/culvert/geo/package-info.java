/**
 * Where on Earth: positions, coordinates as people say them, geodesy, projections, and the sun above a place.
 *
 * <p>Pure: it uses the JDK, JTS, GeoTools, GeographicLib and the Open Location Code library, and no other room knows
 * GeoTools. Its one invariant: latitude and longitude, easting and northing are told apart here and nowhere else, so that
 * the order of axes can be got wrong in one place only.
 */
@NullMarked
package org.culvert.geo;

import org.jspecify.annotations.NullMarked;
