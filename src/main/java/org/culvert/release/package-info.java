/**
 * Where an animal may go back: release rules, sites, assessments and releases.
 *
 * <p>Uses {@code animal} and below. Its one invariant: no case ends by a release while a test stands in the way that
 * nothing has lifted, of statute or code a permit with number and document, of the network's policy a person with a reason.
 */
@NullMarked
package org.culvert.release;

import org.jspecify.annotations.NullMarked;
