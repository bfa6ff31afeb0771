/**
 * What is known of one hotspot, gathered for whoever asks: the run that found it, and what the records tell of its stretch of
 * road now.
 *
 * <p>Uses {@code hotspot}, {@code hotspot.works} and {@code hotspot.when}. Its invariant: it asks the services that answer for a
 * stretch and reads no record itself, so that it tells nobody more than they do.
 */
@NullMarked
package org.culvert.hotspot.card;

import org.jspecify.annotations.NullMarked;
