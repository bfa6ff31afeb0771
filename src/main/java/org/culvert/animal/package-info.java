/**
 * Individuals, their cases, who answers for them, where they are, and how it ended.
 *
 * <p>Uses {@code call}, {@code roster}, {@code taxon} and below. Its one invariant: at any instant at
 * most one holder answers for a case, and the giver stays holder until the taker accepts.
 */
@NullMarked
package org.culvert.animal;

import org.jspecify.annotations.NullMarked;
