/**
 * When collisions happen: directions on the circle of the year and of the day, how sure a season is, and how light it was.
 *
 * <p>Pure: it uses the JDK, {@code org.culvert.geo} for the sun, and the Apache Commons libraries for distributions and
 * random generators. Its one invariant: what is not known stays unknown and is counted as such, and the same sample and
 * seed give the same result in whatever order the events come.
 */
@NullMarked
package org.culvert.hotspot.stats.season;

import org.jspecify.annotations.NullMarked;
