/**
 * Pages of rescuers and carers, for a telephone: what is due, one thing at a time. What is entered without a signal is kept
 * on the telephone by scripts, and sent to the API as the account that entered it; the same forms work without scripts.
 */
@NullMarked
package org.culvert.web.hand;

import org.jspecify.annotations.NullMarked;
