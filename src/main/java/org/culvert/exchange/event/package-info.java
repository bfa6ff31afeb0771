/**
 * Messages to others that something happened, as CloudEvents. It uses {@code platform} alone; the database notes what happened,
 * in the transaction in which it did. Its invariant: a message names a record and says nothing of it, so that whoever hears of
 * it sees no more than what they may read.
 */
@NullMarked
package org.culvert.exchange.event;

import org.jspecify.annotations.NullMarked;
