/**
 * Calls, kept word for word, and the incidents they tell of.
 *
 * <p>Uses {@code taxon}, {@code roster}, {@code road} and below. Its one invariant: the incident is what is counted, and
 * two incidents become one only by someone's decision, which can be undone.
 */
@NullMarked
package org.culvert.call;

import org.jspecify.annotations.NullMarked;
