/**
 * How long eggs take, by what has been published and by the temperatures that were measured; what temperature has to do with
 * the sex of the young; and whether the eggs that were seen are the eggs that came. Pure: no server, no database, no clock.
 *
 * <p>Its one invariant: nothing here says that an egg has failed.
 */
@NullMarked
package org.culvert.care.incubation;

import org.jspecify.annotations.NullMarked;
