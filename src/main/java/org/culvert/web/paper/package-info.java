/**
 * Lays pages out on paper. It knows nothing of what they say, and uses no room. Its invariant: it draws what it is given and
 * loads nothing from anywhere.
 */
@NullMarked
package org.culvert.web.paper;

import org.jspecify.annotations.NullMarked;
