package org.culvert.web.settings;

import java.util.List;

/** Tells wholes of some rooms. */
interface WholeSource {
    List<Whole> wholes();
}
