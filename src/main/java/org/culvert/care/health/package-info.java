/**
 * What animals may pass on to people and to one another: exposures of people, suspicions of diseases that must be notified.
 *
 * <p>Uses {@code release.holds}, {@code animal}, {@code call}, {@code roster}, {@code taxon} and {@code platform}. Its
 * invariant: an animal that somebody was exposed to, or that is under suspicion, is held from the same transaction on, and
 * whom an exposure concerns is read by very few.
 */
@NullMarked
package org.culvert.care.health;

import org.jspecify.annotations.NullMarked;
