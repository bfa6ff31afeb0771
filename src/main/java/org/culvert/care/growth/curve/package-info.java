/**
 * Tables of growth as lines between their rows.
 *
 * <p>Knows no server, no database and no clock. Its one invariant: nothing is said outside of a table.
 */
@NullMarked
package org.culvert.care.growth.curve;

import org.jspecify.annotations.NullMarked;
