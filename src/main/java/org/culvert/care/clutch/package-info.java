/**
 * Clutches with whoever runs the incubator: how the eggs came, how they are kept, how warm they were, and what became of each.
 *
 * <p>Uses {@code care.incubation}, {@code clinic}, {@code animal}, {@code roster} and below. Its one invariant: every egg
 * recovered was set, broken or discarded, and of those set no more hatched and failed than there were.
 */
@NullMarked
package org.culvert.care.clutch;

import org.jspecify.annotations.NullMarked;
