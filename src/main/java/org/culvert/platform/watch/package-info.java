/**
 * What the server tells of itself: headers and name of every answer, the log, the figures, and whether it is ready.
 *
 * <p>Owns no table, and uses {@code platform} alone. Its one invariant: what it tells holds no personal data; it names the
 * operation that was asked for, how it ended and the account, never an address, a word or a name.
 */
@NullMarked
package org.culvert.platform.watch;

import org.jspecify.annotations.NullMarked;
