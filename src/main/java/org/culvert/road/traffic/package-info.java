/**
 * Traffic as somebody counted or estimated it: records of their own, from forms and from files, and what they say of each piece
 * of road in a period.
 *
 * <p>Uses {@code road}, {@code road.network}, {@code road.file}, {@code geo} and {@code platform}. Its one invariant: a figure
 * lies on a road that is sure, and one that was withdrawn counts for nothing.
 */
@NullMarked
package org.culvert.road.traffic;

import org.jspecify.annotations.NullMarked;
