/** What the network goes by, as data: each kind listed and changed by forms that are made from the bodies of the API. */
@NullMarked
package org.culvert.web.settings;

import org.jspecify.annotations.NullMarked;
