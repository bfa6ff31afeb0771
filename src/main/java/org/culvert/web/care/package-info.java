/** A member's day of care, for whoever looks after the carers, and the address of a calendar. */
@NullMarked
package org.culvert.web.care;

import org.jspecify.annotations.NullMarked;
