package org.culvert.web.records;

import java.util.List;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException.FieldError;

/** What pages of old records say when something is refused as a whole. */
final class RecordTold {
    static final FieldError SENT_BEFORE = new FieldError(
            "key",
            "This form was sent before with something else in it, and that was done.",
            "to look whether that is right, and to send this again if it is something more",
            null);

    private RecordTold() {}

    static List<FieldError> of(ConflictException refused) {
        String said = refused.getMessage();
        return List.of(new FieldError("act", said == null ? "" : said, "to look at how far the file is now", null));
    }
}
