/**
 * Limits of time as data, the clocks of cases that they start, what extends them, and notices to authorities.
 *
 * <p>Uses {@code clinic}, {@code animal}, {@code roster}, {@code taxon} and below; {@code care.clock.limit} calculates. Its one
 * invariant: no limit is a number in the code, and one is extended only on a ground that it names or by an order.
 */
@NullMarked
package org.culvert.care.clock;

import org.jspecify.annotations.NullMarked;
