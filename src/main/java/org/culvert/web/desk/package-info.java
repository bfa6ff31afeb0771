/** The dispatcher's pages: a call as it is taken, and an incident until it is closed. */
@NullMarked
package org.culvert.web.desk;

import org.jspecify.annotations.NullMarked;
