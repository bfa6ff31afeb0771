package org.culvert.clinic.profile;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * When a clinic is open, week by week, by its own clocks: where these are put forward or back, the span is an hour shorter or
 * longer, as it is at the door. A time that the clocks leave out is read as java.time reads it, by the length of the gap later.
 */
public record OpeningHours(List<Span> spans) {
    private static final int DAYS_AHEAD = 8;

    /** @param closes from which time of the same day on it is closed; 00:00 is the end of the day */
    public record Span(DayOfWeek day, LocalTime opens, LocalTime closes) {
        /** Whether it opens before it closes. */
        public boolean lasts() {
            return closes.equals(LocalTime.MIDNIGHT) || opens.isBefore(closes);
        }

        Instant opensOn(LocalDate date, ZoneId zone) {
            return date.atTime(opens).atZone(zone).toInstant();
        }

        Instant closesOn(LocalDate date, ZoneId zone) {
            return closes.equals(LocalTime.MIDNIGHT)
                    ? date.plusDays(1).atStartOfDay(zone).toInstant()
                    : date.atTime(closes).atZone(zone).toInstant();
        }

        boolean overlaps(Span other) {
            return day == other.day && startsBeforeEndOf(other) && other.startsBeforeEndOf(this);
        }

        private boolean startsBeforeEndOf(Span other) {
            return other.closes.equals(LocalTime.MIDNIGHT) || opens.isBefore(other.closes);
        }
    }

    public OpeningHours {
        spans = spans.stream()
                .sorted(Comparator.comparing(Span::day).thenComparing(Span::opens))
                .toList();
    }

    /** The first span that overlaps with one before it. */
    public Optional<Span> findOverlap() {
        for (int i = 1; i < spans.size(); i++) {
            if (spans.get(i).overlaps(spans.get(i - 1))) {
                return Optional.of(spans.get(i));
            }
        }
        return Optional.empty();
    }

    /** Until when it is open, for a clinic that is open at an instant; spans that meet at midnight are one. */
    public Optional<Instant> openUntil(Instant at, ZoneId zone) {
        Optional<Instant> until = closing(at, zone);
        for (int more = 0; until.isPresent() && more < DAYS_AHEAD; more++) {
            Optional<Instant> next = closing(until.get(), zone);
            if (next.isEmpty()) {
                return until;
            }
            until = next;
        }
        return until;
    }

    private Optional<Instant> closing(Instant at, ZoneId zone) {
        LocalDate date = at.atZone(zone).toLocalDate();
        return spans.stream()
                .filter(span -> span.day() == date.getDayOfWeek())
                .filter(span -> !at.isBefore(span.opensOn(date, zone)) && at.isBefore(span.closesOn(date, zone)))
                .map(span -> span.closesOn(date, zone))
                .findFirst();
    }

    /** When it opens next after an instant; empty for one that never does. */
    public Optional<Instant> opensNext(Instant after, ZoneId zone) {
        ZonedDateTime local = after.atZone(zone);
        for (int days = 0; days < DAYS_AHEAD; days++) {
            LocalDate date = local.toLocalDate().plusDays(days);
            Optional<Instant> opens = spans.stream()
                    .filter(span -> span.day() == date.getDayOfWeek())
                    .map(span -> span.opensOn(date, zone))
                    .filter(instant -> instant.isAfter(after))
                    .findFirst();
            if (opens.isPresent()) {
                return opens;
            }
        }
        return Optional.empty();
    }
}
