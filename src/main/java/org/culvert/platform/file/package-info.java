/**
 * Pictures and papers that were handed in, kept as they came.
 *
 * <p>Uses {@code platform} alone. Its one invariant: a file is what its media type says by its first octets, is kept with the
 * digest of its content, and never changes.
 */
@NullMarked
package org.culvert.platform.file;

import org.jspecify.annotations.NullMarked;
