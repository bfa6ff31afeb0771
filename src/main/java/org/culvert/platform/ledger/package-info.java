/**
 * The ledger of requests: what was asked with which key, which revision it was meant for, and what was known on a date.
 *
 * <p>Owns {@code personal.idempotency_keys} and the schema {@code as_it_was}, and uses {@code platform} alone. Its one
 * invariant: the effect of a keyed request and the memory of its answer are committed together or not at all.
 */
@NullMarked
package org.culvert.platform.ledger;

import org.jspecify.annotations.NullMarked;
