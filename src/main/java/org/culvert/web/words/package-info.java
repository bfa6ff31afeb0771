/** What pages say, in the languages that the server speaks: English here, others in {@code messages}. */
@NullMarked
package org.culvert.web.words;

import org.jspecify.annotations.NullMarked;
