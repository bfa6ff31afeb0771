package org.culvert.road.file;

import java.io.InputStream;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Kinds of files that features come in, told apart by the type of what is sent. */
public final class FileTypes {
    public static final String GEO_JSON = "application/geo+json";

    /** Registered with IANA. */
    public static final String GEO_PACKAGE = "application/geopackage+sqlite3";

    private FileTypes() {}

    public static SentFile sent(
            @Nullable String contentType, @Nullable String crs, @Nullable String layer, InputStream octets) {
        boolean geoPackage =
                contentType != null && contentType.toLowerCase(Locale.ROOT).startsWith(GEO_PACKAGE);
        return new SentFile(geoPackage, crs, layer, octets);
    }
}
