/**
 * What a limit of time says of one animal: when it starts, when it is due, from when it warns, and what ended it.
 *
 * <p>Uses nothing but Java: no server, no database, no clock. Its one invariant: where it is not known whether a limit binds
 * or when it started, the answer is that it can't be told, and never that there is time left.
 */
@NullMarked
package org.culvert.care.clock.limit;

import org.jspecify.annotations.NullMarked;
