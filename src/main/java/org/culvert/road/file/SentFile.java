package org.culvert.road.file;

import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/**
 * A file of features as it is sent.
 *
 * @param geoPackage whether it is a GeoPackage; else it is GeoJSON
 * @param crs reference system of its coordinates; null takes the file's own, or longitude and latitude on WGS 84
 * @param layer layer of a GeoPackage; null where it has one only
 */
public record SentFile(
        boolean geoPackage, @Nullable String crs, @Nullable String layer, InputStream octets) {}
