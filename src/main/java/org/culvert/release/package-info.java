/**
 * Where an animal may go back: release rules, sites, assessments, releases and what is known of the animals after.
 *
 * <p>Uses {@code animal} and below. Its one invariant: no case ends by a release while a test stands in the way that
 * nothing has lifted, of statute or code a permit with number and document, of the network's policy a person with a reason,
 * or while a decision not to release the animal stands ({@code release.nonrelease}).
 */
@NullMarked
package org.culvert.release;

import org.jspecify.annotations.NullMarked;
