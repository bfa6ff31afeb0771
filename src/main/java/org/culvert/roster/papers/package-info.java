/**
 * Reads authorisations as an inspector does: which of those listed holds for these premises and this supervision. Pure, and the
 * one reading that custody, clutches and placements share.
 */
@NullMarked
package org.culvert.roster.papers;

import org.jspecify.annotations.NullMarked;
