/**
 * Land and release sites from the files that people have. It may use {@code release}, {@code road.file} and what lies below. Its invariant: of a
 * file all that can be entered is, in one transaction, or nothing, and what was left out is told by reason.
 */
@NullMarked
package org.culvert.release.file;

import org.jspecify.annotations.NullMarked;
