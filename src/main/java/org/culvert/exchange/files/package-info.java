/** Files of roads, land and release sites that people bring: kept as they came, read in the background, all of one or nothing. */
@NullMarked
package org.culvert.exchange.files;

import org.jspecify.annotations.NullMarked;
