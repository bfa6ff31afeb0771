/**
 * Occurrences for others, with Darwin Core's names: roughly for everybody, exactly for named recipients under an agreement.
 *
 * <p>It may use every room below, and is used by nobody.
 *
 * <p>Its one invariant: whoever sees rough values is also answered by them, so that no filter and no cursor tells more.
 */
@NullMarked
package org.culvert.exchange.occurrence;

import org.jspecify.annotations.NullMarked;
