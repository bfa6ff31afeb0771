/**
 * Visits to a clinic, of a living animal or a body: what was found, read, done, and what the vet sends it on with.
 *
 * <p>Uses {@code animal}, {@code roster} and below. Its one invariant: the words of a plan are a named vet's, and Culvert
 * proposes none.
 */
@NullMarked
package org.culvert.clinic;

import org.jspecify.annotations.NullMarked;
