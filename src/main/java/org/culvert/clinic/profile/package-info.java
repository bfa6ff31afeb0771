/**
 * What clinics say of themselves: what they treat, when they are open, how they are reached; and which to ask.
 *
 * <p>Uses {@code roster} and below. Its one invariant: what nobody entered is not taken for yes.
 */
@NullMarked
package org.culvert.clinic.profile;

import org.jspecify.annotations.NullMarked;
