/**
 * Who sees what: one table of roles, operations and fields, and the representation that is made from it.
 *
 * <p>It may use {@code platform} alone; rooms tell it by database views whose a record is and how sensitive its place is.
 *
 * <p>Its one invariant: what the table says nothing about is not written.
 */
@NullMarked
package org.culvert.platform.sight;

import org.jspecify.annotations.NullMarked;
