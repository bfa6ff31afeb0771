/**
 * Reads GeoPackage files (OGC 12-128) that people send. It may use {@code platform} alone, and leaves what a geometry means to
 * the rooms above. Its invariant: whatever is in a file, reading it ends, and what is wrong with it is a problem of its sender.
 */
@NullMarked
package org.culvert.platform.geopackage;

import org.jspecify.annotations.NullMarked;
