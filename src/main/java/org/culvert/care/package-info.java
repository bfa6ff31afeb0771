/**
 *  * Placements with carers; plans, days of care and clutches are in rooms of their own.
 *
 * <p>Uses {@code clinic}, {@code animal}, {@code roster} and below. Its one invariant: nobody is given protected wildlife,
 * eggs included, without an authorisation listed for that day.
 */
@NullMarked
package org.culvert.care;

import org.jspecify.annotations.NullMarked;
