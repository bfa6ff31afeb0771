/**
 * Owns what comes in from and goes out to other systems in the formats of GIS and of data standards. It may use every
 * room but the pages. Its invariant: what is read passes through the same services, and so the same rules, as what
 * people type.
 */
@NullMarked
package org.culvert.exchange;

import org.jspecify.annotations.NullMarked;
