/** Annual returns: drafts with their doubts, signing, files, supplements. */
@NullMarked
package org.culvert.web.returns;

import org.jspecify.annotations.NullMarked;
