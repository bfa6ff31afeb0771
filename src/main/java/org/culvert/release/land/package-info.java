/**
 * Land and water of which something is known that bears on where an animal may go: catchments, waters, nesting grounds, land
 * of one owner, burnt and flooded land.
 *
 * <p>Uses {@code geo}, {@code release.rules} and {@code platform}. Its one invariant: what is kept is a valid polygon with a
 * source and a first day, and where nests are is told to few.
 */
@NullMarked
package org.culvert.release.land;

import org.jspecify.annotations.NullMarked;
