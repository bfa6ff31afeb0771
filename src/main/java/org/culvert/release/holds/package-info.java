/**
 * Stops on letting an animal go, for the health of people or animals.
 *
 * <p>Uses {@code animal}, {@code release.rules} and {@code platform}. Its one invariant: a hold ends by being cleared, once,
 * by who may, with a reference; and whom it concerns is nowhere in it.
 */
@NullMarked
package org.culvert.release.holds;

import org.jspecify.annotations.NullMarked;
