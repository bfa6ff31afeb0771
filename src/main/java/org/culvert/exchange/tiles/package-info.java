/**
 * The roads as vector tiles, for maps that are moved about. It may use {@code road}, {@code geo} and {@code platform}. Its
 * invariant: a tile is made of the network's links alone, so that one version of the network has one set of tiles.
 */
@NullMarked
package org.culvert.exchange.tiles;

import org.jspecify.annotations.NullMarked;
