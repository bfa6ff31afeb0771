/**
 * Surges: many animals taken in at once at a tent, under temporary numbers by sector.
 *
 * <p>Uses {@code animal}, {@code call}, {@code roster}, {@code taxon} and below. Its one invariant: a temporary number is given
 * once in a surge, and leads to its case for ever.
 */
@NullMarked
package org.culvert.animal.intake;

import org.jspecify.annotations.NullMarked;
