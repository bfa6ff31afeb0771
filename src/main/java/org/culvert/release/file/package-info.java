/**
 * Pictures and papers that were handed in about releases, kept as they came.
 *
 * <p>Uses {@code platform} alone. Its one invariant: a file is what its media type says by its first octets, and never changes.
 */
@NullMarked
package org.culvert.release.file;

import org.jspecify.annotations.NullMarked;
