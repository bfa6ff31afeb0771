/**
 * What a holder had, got and gave in a span of time, from who held what when.
 *
 * <p>Pure: it knows no server, no database and no clock, takes records and gives records.
 *
 * <p>Its one invariant: of every line, opening + in = out + closing.
 */
@NullMarked
package org.culvert.exchange.annualreturn.tally;

import org.jspecify.annotations.NullMarked;
