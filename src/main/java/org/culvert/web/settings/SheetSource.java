package org.culvert.web.settings;

import java.util.List;

/** Tells sheets of some rooms. */
interface SheetSource {
    List<Sheet> sheets();
}
