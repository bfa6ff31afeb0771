/**
 * The roads: imported networks and their versions, and what place on them is meant by what somebody said.
 *
 * <p>Uses {@code geo} and {@code platform}; the mathematics is in {@code road.network}. Its one invariant: when two roads
 * are equally likely it says so, and never guesses.
 */
@NullMarked
package org.culvert.road;

import org.jspecify.annotations.NullMarked;
