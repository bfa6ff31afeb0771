/**
 * Annual returns of holders to their authorities: forms as data, drafts, what was signed, and supplements.
 *
 * <p>It may use every room below, and is used by the pages alone.
 *
 * <p>Its one invariant: what was signed stays as it is to the octet, and of every line of it opening + in = out + closing.
 */
@NullMarked
package org.culvert.exchange.annualreturn;

import org.jspecify.annotations.NullMarked;
