/**
 * Aftercare plans of cases, and what was done of them.
 *
 * <p>Uses {@code care.template}, {@code clinic}, {@code animal} and below. Its one invariant: one plan is in force for a case at
 * a time, and each of its tasks has one entry.
 */
@NullMarked
package org.culvert.care.plan;

import org.jspecify.annotations.NullMarked;
