/**
 * What the report of a run says beside its hotspots: what is new, what lasts, what hangs on the bandwidth, what other methods
 * show, and what it all rests on.
 *
 * <p>Uses {@code road.network} and {@code hotspot.stats}, and knows nothing of runs, requests or the database. Its one
 * invariant: each section says in words what it claims, at which error rate, or that it claims nothing.
 */
@NullMarked
package org.culvert.hotspot.beside;

import org.jspecify.annotations.NullMarked;
