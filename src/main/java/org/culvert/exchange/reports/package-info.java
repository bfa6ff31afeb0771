/**
 * Reports of road evidence as files: tables, and where they speak of stretches of road, layers. It may use {@code hotspot} and
 * the rooms below. Its invariant: a file says what the answer in JSON says to whoever asks, number by number.
 */
@NullMarked
package org.culvert.exchange.reports;

import org.jspecify.annotations.NullMarked;
