/**
 * Growth: tables that the network loads, measurements of bodies, and what the ones say of the others.
 *
 * <p>Uses {@code animal}, {@code taxon} and below, and {@code care.growth.curve}. Its one invariant: an animal is compared with a
 * table only as a vet has adopted it, and no age is told from a measure that does not tell it.
 */
@NullMarked
package org.culvert.care.growth;

import org.jspecify.annotations.NullMarked;
