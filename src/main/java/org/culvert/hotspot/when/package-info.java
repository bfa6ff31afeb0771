/**
 * When collisions happen: the season and the hour of a group of animals, as the records tell them.
 *
 * <p>Uses {@code hotspot} for who may see how much, and {@code call}, {@code road}, {@code taxon}, {@code geo} and {@code
 * platform}; the mathematics is in {@code hotspot.stats.season}. Its one invariant: the time of a report never stands for the
 * time of a collision where the hour or the light is told, and what is not known is counted as not known.
 */
@NullMarked
package org.culvert.hotspot.when;

import org.jspecify.annotations.NullMarked;
