package org.culvert.exchange.features;

/** Types of shapes, one a collection, so that every program takes its features as one layer. */
enum ShapeType {
    POINT("Point", "geometry-point"),
    LINE_STRING("LineString", "geometry-linestring"),
    MULTI_LINE_STRING("MultiLineString", "geometry-multilinestring");

    private final String geoJson;
    private final String format;

    ShapeType(String geoJson, String format) {
        this.geoJson = geoJson;
        this.format = format;
    }

    /** As RFC 7946 names it. */
    String geoJson() {
        return geoJson;
    }

    /** As OGC API - Features - Part 5 names it. */
    String format() {
        return format;
    }
}
