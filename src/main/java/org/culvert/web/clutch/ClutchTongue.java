package org.culvert.web.clutch;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import org.culvert.care.clutch.ClutchViews.HatchWindowView;
import org.culvert.web.RegionTimes;
import org.culvert.web.words.ClutchWords;

/** How a page of clutches speaks: its words, its days, its figures. */
record ClutchTongue(ClutchWords words, Locale locale, ZoneId zone) {
    String day(LocalDate day) {
        return RegionTimes.format("d MMM yyyy", locale.toLanguageTag()).format(day);
    }

    String day(Instant at) {
        return day(at.atZone(zone).toLocalDate());
    }

    String moment(Instant at) {
        return RegionTimes.format("d MMM yyyy HH:mm", locale.toLanguageTag()).format(at.atZone(zone));
    }

    /** In hours, and from three days on in days (h, d: SI Brochure, table 8). */
    static String age(Duration since) {
        long hours = Math.max(0, since.toHours());
        return hours < 72 ? hours + " h" : hours / 24 + " d";
    }

    /** To one decimal. */
    String number(double value) {
        return String.format(locale, "%.1f", value);
    }

    /** A whole number without a point. */
    String parts(double parts) {
        return parts == Math.rint(parts) ? String.format(locale, "%.0f", parts) : String.format(locale, "%s", parts);
    }

    String window(HatchWindowView window) {
        LocalDate from = window.earliest();
        LocalDate to = window.latest();
        if (from != null && to != null) {
            return words.windowBoth(day(from), day(to));
        }
        return from != null
                ? words.windowFrom(day(from))
                : to != null ? words.windowTo(day(to)) : words.windowUnknown();
    }
}
