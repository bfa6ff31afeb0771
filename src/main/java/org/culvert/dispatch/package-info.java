/**
 * Going out: who can go, the gate before anyone is sent, attendances and how they ended.
 *
 * <p>Uses {@code call}, {@code roster}, {@code road} and below. Its one invariant: nobody is sent without a gate result,
 * and what is unknown counts as dangerous in it.
 */
@NullMarked
package org.culvert.dispatch;

import org.jspecify.annotations.NullMarked;
