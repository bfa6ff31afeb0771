/** Pages of one case from being found to its end, of all of them, and of what waits for a clinic. */
@NullMarked
package org.culvert.web.animal;

import org.jspecify.annotations.NullMarked;
