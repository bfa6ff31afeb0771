/**
 * That an animal may not go back: decided by a vet on grounds, with a second opinion, the authority told, a permit to keep it,
 * welfare reviews, and what is to become of it.
 *
 * <p>Uses {@code animal} and {@code platform.file}, and below. Its one invariant: of a case one decision stands at most, and
 * while it does the animal is not released.
 */
@NullMarked
package org.culvert.release.nonrelease;

import org.jspecify.annotations.NullMarked;
