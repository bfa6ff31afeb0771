/** What is meant by a place, on pages that ask for one. */
@NullMarked
package org.culvert.web.place;

import org.jspecify.annotations.NullMarked;
