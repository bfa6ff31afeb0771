/**
 * Old records that others kept as tables: the file as it came, what was found in it, how somebody decided that it is to be read.
 * Nothing is dropped or changed without being told.
 */
@NullMarked
package org.culvert.exchange.records;

import org.jspecify.annotations.NullMarked;
