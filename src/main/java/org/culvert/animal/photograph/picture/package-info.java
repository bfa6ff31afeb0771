/**
 * Pictures as files: what they say of themselves, which way is up, and copies that say nothing but the picture.
 *
 * <p>Uses {@code platform.file}. Its one invariant: no picture is decoded before its size in pixels is
 * known from its header, and no copy holds anything of a file but its pixels.
 */
@NullMarked
package org.culvert.animal.photograph.picture;

import org.jspecify.annotations.NullMarked;
