/**
 * Reads GeoJSON files (RFC 7946) that people send, one feature at a time. It may use {@code platform} alone, and leaves what a
 * geometry means to the rooms above. Its invariant: however long a file is, one feature is held at a time.
 */
@NullMarked
package org.culvert.platform.geojson;

import org.jspecify.annotations.NullMarked;
