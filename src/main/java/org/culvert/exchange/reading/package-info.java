/**
 * Reads tables as people keep them: in any of the usual encodings, with any of the usual separators, with dates, numbers and
 * chainages written in many ways. Pure: it says what a text means, or that it can mean two things, and decides nothing.
 */
@NullMarked
package org.culvert.exchange.reading;

import org.jspecify.annotations.NullMarked;
