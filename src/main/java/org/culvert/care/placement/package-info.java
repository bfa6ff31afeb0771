/**
 * Who can take an animal into care, and who does: what carers say of themselves, when they are away, what is kept apart, and
 * placements.
 *
 * <p>Uses {@code care.matching}, {@code animal}, {@code roster} and below. Its one invariant: a place is filled once.
 */
@NullMarked
package org.culvert.care.placement;

import org.jspecify.annotations.NullMarked;
