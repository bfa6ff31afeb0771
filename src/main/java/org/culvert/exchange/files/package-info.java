/**
 * Files of roads, land, release sites and traffic counts that people bring: kept as they came, read in the background, all of one
 * or nothing.
 */
@NullMarked
package org.culvert.exchange.files;

import org.jspecify.annotations.NullMarked;
