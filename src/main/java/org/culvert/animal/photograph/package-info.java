/**
 * Photographs of incidents and of cases: the file as it came, sealed, and copies that say nothing but the picture.
 *
 * <p>Uses {@code call}, the rest of {@code animal} and below. Its one invariant: an original is given to nobody without a
 * reason that is kept, and only as long as its content has the digest under which it was sealed; and what a picture says of
 * its place is offered, and never used by itself.
 */
@NullMarked
package org.culvert.animal.photograph;

import org.jspecify.annotations.NullMarked;
