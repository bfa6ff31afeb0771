package org.culvert.web.kept;

import java.util.List;

/** Tells wholes of some rooms. */
interface WholeSource {
    List<Whole> wholes();
}
