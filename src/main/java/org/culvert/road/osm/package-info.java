/**
 * Reads extracts of OpenStreetMap (.osm.pbf) that people send. It may use {@code platform} alone. Its invariant: whatever is in
 * a file, reading it ends within a known memory, and what is wrong with it is a problem of its sender.
 */
@NullMarked
package org.culvert.road.osm;

import org.jspecify.annotations.NullMarked;
