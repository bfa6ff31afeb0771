/**
 * Kinds of animal that the network's holders may not hold, and to whom they go instead.
 *
 * <p>Uses {@code taxon} and {@code platform}. Its one invariant: it only says so; custody is recorded whatever it says, since
 * somebody has the animal in a box.
 */
@NullMarked
package org.culvert.animal.referral;

import org.jspecify.annotations.NullMarked;
