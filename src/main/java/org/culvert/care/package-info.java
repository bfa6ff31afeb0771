/**
 * Care until the last day: each of its parts is in a package of its own.
 *
 * <p>Uses {@code clinic}, {@code animal}, {@code roster} and below. Its one invariant: nobody is given protected wildlife,
 * eggs included, without an authorisation listed for that day.
 */
@NullMarked
package org.culvert.care;

import org.jspecify.annotations.NullMarked;
