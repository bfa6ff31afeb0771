/** What may be done by forms that are made from the bodies of the API: its description, rights, fields and words. */
@NullMarked
package org.culvert.web.acts;

import org.jspecify.annotations.NullMarked;
