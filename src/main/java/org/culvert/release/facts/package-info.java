/**
 * What has been published of species that bears on where and when they may go back: findings of studies, and no law.
 *
 * <p>Uses {@code release.rules} and {@code platform}. Its one invariant: no fact is without its words, its source and the day
 * on which somebody read it.
 */
@NullMarked
package org.culvert.release.facts;

import org.jspecify.annotations.NullMarked;
