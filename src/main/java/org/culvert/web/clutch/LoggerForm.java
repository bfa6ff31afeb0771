package org.culvert.web.clutch;

import jakarta.ws.rs.FormParam;
import org.jspecify.annotations.Nullable;

/** What is said beside the file of a logger. */
public class LoggerForm {
    @FormParam("source")
    @Nullable
    String source;

    @FormParam("timeColumn")
    @Nullable
    String timeColumn;

    @FormParam("temperatureColumn")
    @Nullable
    String temperatureColumn;

    @FormParam("utcOffset")
    @Nullable
    String utcOffset;

    @FormParam("key")
    @Nullable
    String key;
}
