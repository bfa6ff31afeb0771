/**
 * Which animals there are: groups that the job treats alike, taxa within them, cautions for whoever meets one.
 *
 * <p>Uses {@code platform} alone. Its one invariant: what is known of an animal is data with a source, never code.
 */
@NullMarked
package org.culvert.taxon;

import org.jspecify.annotations.NullMarked;
