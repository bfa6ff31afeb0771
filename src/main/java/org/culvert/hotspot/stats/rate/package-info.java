/**
 * How many collisions a stretch of road has, is expected to have and has in excess, and what works did about it or may do.
 *
 * <p>Pure: it uses the JDK and the Apache Commons libraries for distributions and special functions, and knows no server,
 * no database, no file and no clock. Its one invariant: no figure comes without its uncertainty and what it rests on, so a
 * raw count before and after works never stands alone, a model that did not converge says why instead of giving numbers,
 * and the same input gives the same result to the last bit.
 */
@NullMarked
package org.culvert.hotspot.stats.rate;

import org.jspecify.annotations.NullMarked;
