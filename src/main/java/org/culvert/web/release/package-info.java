/** Pages of releases: where an animal may go back and what stands against it, releases and what is known since, rules. */
@NullMarked
package org.culvert.web.release;

import org.jspecify.annotations.NullMarked;
