/** What is kept of a case, an incident, a clutch and the like: shown record by record, corrected, taken back and added to. */
@NullMarked
package org.culvert.web.kept;

import org.jspecify.annotations.NullMarked;
