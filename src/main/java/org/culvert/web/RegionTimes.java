package org.culvert.web;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.culvert.platform.RegionService;
import org.jspecify.annotations.Nullable;

/** Days and hours in the region's zone, in the language of a page: {@code inject:times.at(instant, frame:language)}. */
@Named("times")
@RequestScoped
public class RegionTimes {
    private final RegionService region;
    private final Clock clock;
    private @Nullable ZoneId zone;

    RegionTimes(RegionService region, Clock clock) {
        this.region = region;
        this.clock = clock;
    }

    /** With the day of the week; with the year instead where it is another one. */
    public String at(Instant instant, String language) {
        ZonedDateTime there = instant.atZone(zone());
        int year = clock.instant().atZone(zone()).getYear();
        return there.getYear() == year ? format("EEE d MMM, HH:mm", language).format(there) : moment(instant, language);
    }

    /** The hour alone where it is of today. */
    public String clock(Instant instant, Instant now, String language) {
        boolean ofToday = LocalDate.ofInstant(instant, zone()).equals(LocalDate.ofInstant(now, zone()));
        return ofToday ? format("HH:mm", language).format(instant.atZone(zone())) : at(instant, language);
    }

    /** Of another year, too. */
    public String moment(Instant instant, String language) {
        return format("d MMM yyyy, HH:mm", language).format(instant.atZone(zone()));
    }

    /** The day of an instant, or the first and the last day before another one. */
    public String span(Instant from, Instant before, String language) {
        LocalDate first = LocalDate.ofInstant(from, zone());
        LocalDate last = LocalDate.ofInstant(before.minusMillis(1), zone());
        DateTimeFormatter format = format("d MMM yyyy", language);
        return last.isAfter(first) ? format.format(first) + " – " + format.format(last) : format.format(first);
    }

    public String day(LocalDate day, String language) {
        return format("EEE d MMM yyyy", language).format(day);
    }

    public String monthDay(MonthDay day, String language) {
        return format("d MMMM", language).format(day);
    }

    /** Without its weekday. */
    public String date(LocalDate day, String language) {
        return format("d MMM yyyy", language).format(day);
    }

    /** The same in the language of the page that is asked for, for what is no bean. */
    public static String plain(LocalDate day) {
        return format("d MMM yyyy", Languages.now().toLanguageTag()).format(day);
    }

    /** Asked for once a page, which may show a hundred times. */
    private ZoneId zone() {
        ZoneId known = zone;
        if (known == null) {
            known = region.zone();
            zone = known;
        }
        return known;
    }

    /** In German a point stands behind the day. */
    public static DateTimeFormatter format(String pattern, String language) {
        Locale locale = Locale.forLanguageTag(language);
        return DateTimeFormatter.ofPattern(
                locale.getLanguage().equals("de") ? pattern.replace("d MMM", "d. MMM") : pattern, locale);
    }
}
