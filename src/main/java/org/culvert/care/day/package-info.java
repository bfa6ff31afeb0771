/**
 * A carer's day, and the tasks that a coordinator hears of.
 *
 * <p>Uses {@code care.plan} and what that uses. Its one invariant: whoever sees a day sees the animals of their own sight alone.
 */
@NullMarked
package org.culvert.care.day;

import org.jspecify.annotations.NullMarked;
