/**
 * Any stretch that a person asks about, the works on it, and what they did: records of works, and questions whose answers
 * are worked out anew each time.
 *
 * <p>Uses {@code hotspot}, {@code call}, {@code road}, {@code taxon} and {@code platform}; the mathematics is in {@code
 * hotspot.stats.rate}. Its one invariant: counts from before and after works are never shown without an estimate of what
 * would have come without them.
 */
@NullMarked
package org.culvert.hotspot.works;

import org.jspecify.annotations.NullMarked;
