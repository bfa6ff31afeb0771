/** Pages of clutches: what waits for each, every egg accounted for, and forms for what is done. */
@NullMarked
package org.culvert.web.clutch;

import org.jspecify.annotations.NullMarked;
