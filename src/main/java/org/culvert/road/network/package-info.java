/**
 * Roads as mathematics: noding, chainage, snapping, distances along roads, on flat arrays.
 *
 * <p>Pure: it uses {@code org.culvert.geo}, JTS and the JDK, and knows no server, no database and no clock. Its one
 * invariant: two lines meet only where they share a vertex at the same level, never where they merely cross.
 */
@NullMarked
package org.culvert.road.network;

import org.jspecify.annotations.NullMarked;
