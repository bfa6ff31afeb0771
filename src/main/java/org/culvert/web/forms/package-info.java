/** Forms of pages that say what the API's bodies say: fields as they stand, what was typed, and the body it makes. */
@NullMarked
package org.culvert.web.forms;

import org.jspecify.annotations.NullMarked;
