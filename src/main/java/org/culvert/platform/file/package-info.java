/**
 * Pictures and papers that were handed in, kept as they came, and documents of the server's own that were signed.
 *
 * <p>Uses {@code platform} alone. Its one invariant: what was handed in is what its media type says by its first octets, and
 * every file is kept with the digest of its content and never changes.
 */
@NullMarked
package org.culvert.platform.file;

import org.jspecify.annotations.NullMarked;
