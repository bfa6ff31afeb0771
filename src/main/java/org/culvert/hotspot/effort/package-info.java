/**
 * Surveys of roads: who went along which stretch and when, looking for struck animals, so that a run can judge what was found
 * by how often somebody looked.
 *
 * <p>Uses {@code hotspot}, {@code hotspot.works} for stretches, {@code roster}, {@code road}, {@code taxon} and {@code
 * platform}. Its one invariant: a survey counts for the animals that it looked for and for no others, and one that was
 * withdrawn counts for none.
 */
@NullMarked
package org.culvert.hotspot.effort;

import org.jspecify.annotations.NullMarked;
