/**
 * Which stretches of road kill which animals in which season: runs of the search, kept, and what came out of them.
 *
 * <p>Uses {@code call}, {@code road}, {@code taxon} and {@code platform}; the mathematics is in {@code hotspot.stats}. Its
 * one invariant: a stretch is called a hotspot only against a named kind of chance at a stated error rate, and the same
 * run on the same records gives the same bytes.
 */
@NullMarked
package org.culvert.hotspot;

import org.jspecify.annotations.NullMarked;
