package org.culvert.web.release;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.culvert.web.RegionTimes;
import org.culvert.web.words.ReleaseWords;

/** How pages of releases speak: their words, days and figures. */
record ReleaseTongue(ReleaseWords words, Locale locale, ZoneId zone) {
    String day(LocalDate day) {
        return RegionTimes.format("d MMM yyyy", locale.toLanguageTag()).format(day);
    }

    String moment(Instant at) {
        return RegionTimes.format("d MMM yyyy, HH:mm", locale.toLanguageTag()).format(at.atZone(zone));
    }

    String size(double squareMetres) {
        return squareMetres == 0
                ? words.nothing()
                : squareMetres < 10_000
                        ? String.format(locale, "%,.0f m²", squareMetres)
                        : String.format(locale, "%,.2f km²", squareMetres / 1e6);
    }

    String distance(double metres) {
        return metres < 1000
                ? String.format(locale, "%.0f m", metres)
                : String.format(locale, "%,.2f km", metres / 1000);
    }
}
