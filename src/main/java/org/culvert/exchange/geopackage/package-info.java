/**
 * Writes GeoPackage files (OGC 12-128), and hotspots as such. It may use {@code hotspot} and {@code platform}. Its invariant: a
 * file says the same as the GeoJSON of the same report, and the same report is the same bytes.
 */
@NullMarked
package org.culvert.exchange.geopackage;

import org.jspecify.annotations.NullMarked;
