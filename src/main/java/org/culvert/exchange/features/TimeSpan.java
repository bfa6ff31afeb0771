package org.culvert.exchange.features;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Locale;
import java.util.regex.Pattern;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * A span of time, both ends included.
 *
 * @param from null where it is open
 * @param to null where it is open
 */
record TimeSpan(@Nullable Instant from, @Nullable Instant to) {
    static final TimeSpan EVER = new TimeSpan(null, null);

    private static final Pattern TIME =
            Pattern.compile("\\d{4}-\\d{2}-\\d{2}(T\\d{2}:\\d{2}:\\d{2}(\\.\\d{1,9})?(Z|[+-]\\d{2}:\\d{2}))?");
    private static final String WANTED =
            "an instant such as 2026-11-25T18:40:00Z, a day, or two of them with / between, of which one may be ..";

    /** Of these years programs speak where they mean no end. */
    private static final Pattern NO_END = Pattern.compile("(0000|9999)-.*");

    boolean isEver() {
        return from == null && to == null;
    }

    boolean meets(@Nullable Instant at) {
        return at == null || ((from == null || !at.isBefore(from)) && (to == null || !at.isAfter(to)));
    }

    /** Whether a day has a part in it. */
    boolean meets(@Nullable LocalDate day, ZoneId zone) {
        return day == null
                || ((from == null
                                || from.isBefore(
                                        day.plusDays(1).atStartOfDay(zone).toInstant()))
                        && (to == null || !to.isBefore(day.atStartOfDay(zone).toInstant())));
    }

    @Nullable
    LocalDate firstDay(ZoneId zone) {
        return from == null ? null : from.atZone(zone).toLocalDate();
    }

    @Nullable
    LocalDate lastDay(ZoneId zone) {
        return to == null ? null : to.atZone(zone).toLocalDate();
    }

    /**
     * The parameter {@code datetime}: an instant or an interval of RFC 3339, or of whole days.
     *
     * @param zone of days
     * @throws InvalidException naming {@code datetime}
     */
    static TimeSpan parse(String text, ZoneId zone) {
        String[] parts = text.toUpperCase(Locale.ROOT).split("/", -1);
        if (parts.length == 1) {
            return one(parts[0], zone);
        }
        if (parts.length != 2 || (isOpen(parts[0]) && isOpen(parts[1]))) {
            throw wrong("This is neither an instant nor an interval.");
        }
        TimeSpan first = isOpen(parts[0]) ? EVER : one(parts[0], zone);
        TimeSpan last = isOpen(parts[1]) ? EVER : one(parts[1], zone);
        Instant from = meansNoEnd(parts[0]) ? null : first.from();
        Instant to = meansNoEnd(parts[1]) ? null : last.to();
        if (from != null && to != null && to.isBefore(from)) {
            throw wrong("The interval ends before it begins.");
        }
        return new TimeSpan(from, to);
    }

    private static boolean meansNoEnd(String part) {
        return NO_END.matcher(part).matches();
    }

    private static boolean isOpen(String part) {
        return part.isEmpty() || part.equals("..");
    }

    private static TimeSpan one(String text, ZoneId zone) {
        if (!TIME.matcher(text).matches()) {
            throw wrong("This is no instant, and no day.");
        }
        try {
            if (text.length() == "2026-11-25".length()) {
                LocalDate on = LocalDate.parse(text);
                return new TimeSpan(
                        on.atStartOfDay(zone).toInstant(),
                        on.plusDays(1).atStartOfDay(zone).toInstant().minusNanos(1));
            }
            Instant at = OffsetDateTime.parse(text).toInstant();
            return new TimeSpan(at, at);
        } catch (DateTimeException impossible) {
            throw wrong("There is no such time.");
        }
    }

    private static InvalidException wrong(String detail) {
        return InvalidException.of("datetime", detail, WANTED);
    }
}
