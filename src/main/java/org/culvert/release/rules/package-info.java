/**
 * What release rules say of one animal and one place: each test with its figures and a verdict of pass, fail or can't
 * tell.
 *
 * <p>Pure: it uses the JDK and {@code geo} alone, and is told the day. Its one invariant: nothing passes that may, by the
 * uncertainty of what is known, be otherwise; and nothing here calls a release anything more than what its rules say.
 */
@NullMarked
package org.culvert.release.rules;

import org.jspecify.annotations.NullMarked;
