/**
 * What a vet signed of an animal before it may go back.
 *
 * <p>Uses {@code clinic}, {@code animal}, {@code roster}, {@code release.rules} and {@code platform}. Its one invariant: a
 * check that was signed is never changed; what is seen later is a new one.
 */
@NullMarked
package org.culvert.release.fitness;

import org.jspecify.annotations.NullMarked;
