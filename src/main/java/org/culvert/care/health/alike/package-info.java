/**
 * Which reports are alike, near in place and time. Pure: it uses {@code geo} and mathematics alone.
 *
 * <p>Two reports are near when the shortest line between their places, rounded to whole metres, is no longer than so many
 * kilometres, and their days are no more than so many apart. A report with at least n animals near it, its own included, is
 * the middle of a group: all that are near it. Groups that share a report are one.
 */
@NullMarked
package org.culvert.care.health.alike;

import org.jspecify.annotations.NullMarked;
