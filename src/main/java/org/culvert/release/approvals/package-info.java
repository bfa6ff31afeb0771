/**
 * Who said, and when, that animals may be let go at a site or that the animal of a case may; and who said no.
 *
 * <p>Uses {@code release} for sites, {@code animal}, {@code release.rules} and {@code platform}. Its one invariant: an answer
 * stands until it is withdrawn or its last day has passed, and none is overwritten by a later one.
 */
@NullMarked
package org.culvert.release.approvals;

import org.jspecify.annotations.NullMarked;
