package org.culvert.exchange.reading;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.culvert.exchange.reading.Headings.Field;
import org.jspecify.annotations.Nullable;

/** When a row tells of: its day, hour, or year alone. */
final class DayCells {
    private static final String ANY_DAY = "a day such as 2024-03-09, or one in the order decided for the file";

    private static final Pattern BETWEEN = Pattern.compile("\\s+(?:-|–|to|bis|au|al)\\s+");
    private static final int A_WEEK = 7;

    /** What cells tell; all null where they tell nothing. */
    record When(
            @Nullable LocalDate day,
            @Nullable LocalDate lastDay,
            @Nullable LocalTime time,
            @Nullable Integer year) {}

    private static final When NEVER = new When(null, null, null, null);

    /** How a cell of a day was understood, to be remembered. */
    private record Understood(
            Dates.@Nullable Day day,
            Dates.@Nullable Span span,
            @Nullable Integer year,
            boolean serial,
            Dates.@Nullable Order otherOrder,
            boolean twoWays) {}

    private final ReadingSettings settings;
    private final LocalDate latest;
    private final ZoneId zone;
    private final Remembered<Understood> days = new Remembered<>(this::understand);
    private final Remembered<Optional<Hours.Told>> hours =
            new Remembered<>(cell -> Optional.ofNullable(Hours.readAlone(cell)));

    DayCells(ReadingSettings settings, LocalDate latest, ZoneId zone) {
        this.settings = settings;
        this.latest = latest;
        this.zone = zone;
    }

    When read(RowCells row) {
        When day = day(row);
        String cell = row.told(Field.time);
        if (cell == null) {
            return day;
        }
        Hours.Told told = hours.of(cell).orElse(null);
        if (told == null) {
            LocalTime within = Dates.parse(cell, Dates.Order.dayMonthYear, latest)
                    .map(Dates.Day::time)
                    .orElse(null);
            if (within == null) {
                row.note(
                        Finding.Kind.unreadableTime,
                        Field.time,
                        "The hour " + RowCells.quoted(cell) + " is not understood, and is left out.");
                return day;
            }
            told = new Hours.Told(within, null);
        }
        LocalTime time = hour(told.time());
        if (time != null && day.lastDay() != null) {
            row.note(
                    Finding.Kind.unreadableTime,
                    Field.time,
                    "On which of the days it was " + RowCells.quoted(cell) + " is not told, and the hour is left out.");
            return day;
        }
        if (day.time() != null && time != null && !day.time().equals(time)) {
            row.doubt(
                    Finding.Kind.unreadableTime,
                    Field.time,
                    "The hour " + RowCells.quoted(cell) + " is another than that of the day, " + day.time()
                            + "; that of its own column is taken.",
                    "the same hour in both, or in one of them");
        }
        return time == null || day.day() == null ? day : inZone(new Dates.Day(day.day(), time, told.offset()));
    }

    private When day(RowCells row) {
        String cell = row.told(Field.day);
        if (cell == null) {
            return parts(row);
        }
        Understood understood = days.of(cell);
        if (understood.twoWays()) {
            row.refuse(
                    Finding.Kind.twoWaysOfDay,
                    Field.day,
                    "The day " + RowCells.quoted(cell) + " can be read in two ways.",
                    "the order of day and month, decided for the file");
            return NEVER;
        }
        Dates.Day day = understood.day();
        if (day == null) {
            if (understood.span() != null) {
                return span(row, Field.day, understood.span());
            }
            if (understood.year() != null) {
                return year(row, Field.day, understood.year());
            }
            row.refuse(
                    Finding.Kind.unreadableDay,
                    Field.day,
                    "The day " + RowCells.quoted(cell) + " is not understood.",
                    ANY_DAY);
            return NEVER;
        }
        if (understood.serial() && !settings.serialDays()) {
            row.doubt(
                    Finding.Kind.unreadableDay,
                    Field.day,
                    RowCells.quoted(cell) + " is taken for a day as spreadsheets keep it: " + day.date() + ".",
                    ANY_DAY);
        }
        if (understood.otherOrder() != null) {
            row.doubt(
                    Finding.Kind.twoWaysOfDay,
                    Field.day,
                    "The day " + RowCells.quoted(cell) + " is none in the order of the file; in another order it is "
                            + day.date() + ".",
                    ANY_DAY);
        }
        if (day.date().isAfter(latest)) {
            row.refuse(
                    Finding.Kind.dayInFuture,
                    Field.day,
                    "The day " + RowCells.quoted(cell) + " is not yet: " + day.date() + ".",
                    "a day that has been");
            return NEVER;
        }
        // Where hours have a column of their own, that of days is often given with the hour nought
        boolean hourApart =
                row.has(Field.time) && day.time() != null && day.time().toSecondOfDay() == 0;
        return hourApart ? new When(day.date(), null, null, null) : inZone(day);
    }

    private When inZone(Dates.Day day) {
        LocalTime time = day.time() == null ? null : hour(day.time());
        ZoneOffset offset = day.offset();
        if (time == null || offset == null) {
            return new When(day.date(), null, time, null);
        }
        LocalDateTime there =
                day.date().atTime(time).atOffset(offset).atZoneSameInstant(zone).toLocalDateTime();
        return new When(there.toLocalDate(), null, there.toLocalTime(), null);
    }

    private @Nullable LocalTime hour(LocalTime time) {
        return settings.midnightIsNoHour() && time.toSecondOfDay() == 0 ? null : time;
    }

    /** Year, month and day in columns of their own. */
    private When parts(RowCells row) {
        String yearCell = row.told(Field.year);
        if (yearCell == null) {
            row.refuse(
                    Finding.Kind.missingDay,
                    row.has(Field.day) ? Field.day : Field.year,
                    "No day is told.",
                    "a day, or at least a year");
            return NEVER;
        }
        OptionalInt year = Dates.yearAlone(yearCell);
        if (year.isEmpty()) {
            row.refuse(
                    Finding.Kind.unreadableDay,
                    Field.year,
                    "The year " + RowCells.quoted(yearCell) + " is not understood.",
                    "a year of four figures");
            return NEVER;
        }
        String monthCell = row.told(Field.month);
        String dayCell = row.told(Field.dayOfMonth);
        if (monthCell == null) {
            return year(row, Field.year, year.getAsInt());
        }
        Integer named = Dates.monthNamed(monthCell);
        try {
            int month = named != null ? named : whole(monthCell);
            if (dayCell == null) {
                YearMonth of = YearMonth.of(year.getAsInt(), month);
                return span(
                        row,
                        Field.month,
                        new Dates.Span(
                                new Dates.Day(of.atDay(1), null, null), new Dates.Day(of.atEndOfMonth(), null, null)));
            }
            LocalDate date = LocalDate.of(year.getAsInt(), month, whole(dayCell));
            if (!date.isAfter(latest)) {
                return new When(date, null, null, null);
            }
            row.refuse(
                    Finding.Kind.dayInFuture, Field.year, "The day is not yet: " + date + ".", "a day that has been");
        } catch (DateTimeException | NumberFormatException noSuchDay) {
            row.refuse(
                    Finding.Kind.unreadableDay,
                    Field.dayOfMonth,
                    "There is no day "
                            + RowCells.quoted(yearCell + "-" + monthCell + (dayCell == null ? "" : "-" + dayCell))
                            + ".",
                    ANY_DAY);
        }
        return NEVER;
    }

    private static int whole(String cell) {
        return Integer.parseInt(cell.endsWith(".0") ? cell.substring(0, cell.length() - 2) : cell);
    }

    private When year(RowCells row, Field field, int year) {
        if (year > latest.getYear()) {
            row.refuse(Finding.Kind.dayInFuture, field, "The year " + year + " is not yet.", "a year that has been");
            return NEVER;
        }
        row.doubt(
                Finding.Kind.yearAlone,
                field,
                "The year " + year + " is told, and no day: nothing can be said of its season or hour.",
                "the day, where somebody knows it");
        return new When(null, null, null, year);
    }

    /** Days between two ends; those within a week are near enough to be no matter. */
    private When span(RowCells row, Field field, Dates.Span span) {
        LocalDate first = there(span.first());
        LocalDate last = there(span.last());
        if (first.isAfter(latest)) {
            row.refuse(Finding.Kind.dayInFuture, field, "The day is not yet: " + first + ".", "a day that has been");
            return NEVER;
        }
        if (span.first().time() != null || span.last().time() != null) {
            row.note(
                    Finding.Kind.unreadableTime,
                    field,
                    "Between which hours it was is told, and no hour at which: they are left out.");
        }
        if (first.equals(last)) {
            return new When(first, null, null, null);
        }
        String detail = "It was on a day from " + first + " to " + last + ": on which, and at what hour, is not told.";
        if (first.plusDays(A_WEEK).isAfter(last)) {
            row.note(Finding.Kind.severalDays, field, detail);
        } else {
            row.doubt(Finding.Kind.severalDays, field, detail, "the day, where somebody knows it");
        }
        return new When(first, last, null, null);
    }

    private LocalDate there(Dates.Day day) {
        return day.time() == null || day.offset() == null
                ? day.date()
                : day.date()
                        .atTime(day.time())
                        .atOffset(day.offset())
                        .atZoneSameInstant(zone)
                        .toLocalDate();
    }

    /** Days between two ends, as ISO 8601 writes them or in the order of the file with a dash or a word between. */
    private Dates.@Nullable Span span(String cell) {
        Dates.Span written = Dates.span(cell, latest).orElse(null);
        String[] ends = BETWEEN.split(cell, -1);
        Dates.Order order = settings.dayOrder();
        if (written != null || ends.length != 2 || order == null) {
            return written;
        }
        Dates.Day first = Dates.parse(ends[0], order, latest).orElse(null);
        Dates.Day last = Dates.parse(ends[1], order, latest).orElse(null);
        return first == null || last == null || last.date().isBefore(first.date()) ? null : new Dates.Span(first, last);
    }

    private Understood understand(String cell) {
        Dates.Order order = settings.dayOrder();
        if (order != null) {
            Dates.Day day = Dates.parse(cell, order, latest).orElse(null);
            if (day != null) {
                return new Understood(day, null, null, false, null, false);
            }
        }
        Set<LocalDate> readings = new LinkedHashSet<>();
        Dates.Order only = null;
        Dates.Day found = null;
        for (Dates.Order other : EnumSet.allOf(Dates.Order.class)) {
            Dates.Day day = Dates.parse(cell, other, latest).orElse(null);
            if (day != null && readings.add(day.date())) {
                only = other;
                found = day;
            }
        }
        if (readings.size() == 1) {
            return new Understood(found, null, null, false, order == null ? null : only, false);
        }
        if (readings.size() > 1) {
            return new Understood(null, null, null, false, null, true);
        }
        Dates.Day serial = Dates.serial(cell).orElse(null);
        if (serial != null) {
            return new Understood(serial, null, null, true, null, false);
        }
        OptionalInt year = Dates.yearAlone(cell);
        Dates.Span span = year.isPresent() ? null : span(cell);
        return new Understood(null, span, year.isPresent() ? year.getAsInt() : null, false, null, false);
    }
}
