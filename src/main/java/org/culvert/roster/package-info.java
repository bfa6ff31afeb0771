/**
 * Who belongs to the network: organisations, members, what each may hold, who is vaccinated.
 *
 * <p>Uses {@code taxon}, {@code geo} and {@code platform}. Its one invariant: what is not listed as valid on a day is not
 * authorised on that day, and no vaccination record is no vaccination.
 */
@NullMarked
package org.culvert.roster;

import org.jspecify.annotations.NullMarked;
