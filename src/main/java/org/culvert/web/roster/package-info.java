/** Who belongs to the network, what lapses, places free, and what is kept of people. */
@NullMarked
package org.culvert.web.roster;

import org.jspecify.annotations.NullMarked;
