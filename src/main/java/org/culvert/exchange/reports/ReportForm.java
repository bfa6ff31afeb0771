package org.culvert.exchange.reports;

import org.culvert.platform.NotFoundException;

/** What a file of a report is. */
enum ReportForm {
    csv(ReportForm.CSV),
    geojson(ReportForm.GEO_JSON),
    gpkg(ReportForm.GEOPACKAGE);

    static final String CSV = "text/csv;charset=UTF-8;header=present";
    static final String GEO_JSON = "application/geo+json";

    /** Registered with IANA. */
    static final String GEOPACKAGE = "application/geopackage+sqlite3";

    private final String mediaType;

    ReportForm(String mediaType) {
        this.mediaType = mediaType;
    }

    String mediaType() {
        return mediaType;
    }

    /** By how its file's name ends. */
    static ReportForm require(String ending) {
        for (ReportForm form : values()) {
            if (form.name().equals(ending)) {
                return form;
            }
        }
        throw new NotFoundException("form of a report (csv, geojson or gpkg)", ending);
    }

    String fileName(ReportTable table) {
        return table.name().replace('_', '-') + "." + name();
    }
}
