/**
 * A carer's tasks as a calendar (RFC 5545) that the carer's own programs read.
 *
 * <p>Uses {@code care.plan} and below. Its one invariant: what is written into a calendar says nothing of people, places and
 * species.
 */
@NullMarked
package org.culvert.care.calendar;

import org.jspecify.annotations.NullMarked;
