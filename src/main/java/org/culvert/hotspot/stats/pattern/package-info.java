/**
 * Patterns of events on a road network beside the search for hotspots: scans in space and time, what lasts, grouping by
 * distance along roads, the network K function, Getis and Ord's statistics, false discovery, counts by segment.
 *
 * <p>Pure: it uses {@code org.culvert.road.network}, {@code org.culvert.hotspot.stats} for its threads, the JDK and the Apache
 * Commons libraries for distributions and random generators. Its one invariant: the same events, settings and seed give the
 * same result, in whatever order the events come and on however many threads it is computed.
 */
@NullMarked
package org.culvert.hotspot.stats.pattern;

import org.jspecify.annotations.NullMarked;
