/**
 * Where on a road network collisions are denser than a named kind of chance allows, as mathematics.
 *
 * <p>Pure: it uses {@code org.culvert.road.network}, the JDK and the Apache Commons libraries for numbers and random
 * generators, and knows no server, no database and no clock. Its one invariant: the same events, settings and seed give
 * the same result, in whatever order the events come and on however many threads it is computed.
 */
@NullMarked
package org.culvert.hotspot.stats;

import org.jspecify.annotations.NullMarked;
