/** The coordinator's page: what waits. */
@NullMarked
package org.culvert.web.overview;

import org.jspecify.annotations.NullMarked;
