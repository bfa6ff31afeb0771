package org.culvert.care.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.CalendarComponent;
import org.culvert.care.schedule.Measure;
import org.culvert.care.schedule.Phase;
import org.culvert.care.schedule.Rhythm;
import org.culvert.care.schedule.Schedule;
import org.culvert.care.schedule.Step;
import org.culvert.care.schedule.Task;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Calendars are read back by biweekly, and by ical4j, which had no part in writing them. */
class CalendarTextTest {
    private static final Instant CHANGED = Instant.parse("2026-01-02T03:04:05Z");

    private static List<Task> tasks(LocalDate dayZero, ZoneId zone, Rhythm rhythm, int last, @Nullable LocalTime hour) {
        var step = new Step(
                "hardware-begins",
                "Ring Ann, in Mill Road; she has it.",
                0,
                last,
                rhythm,
                null,
                Measure.none,
                null,
                null,
                null,
                null,
                null,
                hour);
        return new Schedule(dayZero, zone, List.of(new Phase(0, List.of(step)))).tasks();
    }

    private static TaskEvent event(Task task, boolean cancelled, int sequence) {
        return new TaskEvent(
                TaskEvent.uid(new UUID(1, 2), new UUID(3, 4), task), 1234, task, cancelled, sequence, CHANGED);
    }

    private static Calendar readByAnother(String text) throws Exception {
        return new CalendarBuilder().build(new StringReader(text));
    }

    private static String value(CalendarComponent component, String property) {
        return component.<Property>getProperty(property).getValue();
    }

    @Test
    void aTaskOfWholeDays() throws Exception {
        Task task = tasks(LocalDate.of(2026, 11, 29), ZoneId.of("Australia/Sydney"), Rhythm.once, 6, null)
                .get(0);
        String text = CalendarText.write(List.of(event(task, false, 3)));

        VEvent read = Biweekly.parse(text).first().getEvents().get(0);
        assertThat(read.getUid().getValue())
                .isEqualTo(TaskEvent.uid(new UUID(1, 2), new UUID(3, 4), task).toString());
        assertThat(read.getSequence().getValue()).isEqualTo(3);
        assertThat(read.getDateStart().getValue().hasTime()).isFalse();
        assertThat(read.getDateTimeStamp().getValue().toInstant()).isEqualTo(CHANGED);
        assertThat(read.getSummary().getValue()).isEqualTo("Case 1234: hardware begins");

        CalendarComponent other =
                readByAnother(text).<CalendarComponent>getComponents("VEVENT").get(0);
        // RFC 5545, section 3.6.1: the end of an event is not part of it
        assertThat(value(other, "DTSTART")).isEqualTo("20261129");
        assertThat(value(other, "DTEND")).isEqualTo("20261206");
        assertThat(value(other, "STATUS")).isEqualTo("CONFIRMED");
        assertThat(value(other, "CLASS")).isEqualTo("PRIVATE");
        assertThat(value(other, "TRANSP")).isEqualTo("TRANSPARENT");
        assertThat(text).contains("DTSTART;VALUE=DATE:20261129\r\n").doesNotContain("Ann", "Mill Road");
    }

    @Test
    void whatIsNotToBeDoneAnyMoreIsCancelled() throws Exception {
        Task task = tasks(LocalDate.of(2026, 11, 29), ZoneId.of("UTC"), Rhythm.once, 0, null)
                .get(0);
        CalendarComponent read = readByAnother(CalendarText.write(List.of(event(task, true, 9))))
                .<CalendarComponent>getComponents("VEVENT")
                .get(0);
        assertThat(value(read, "STATUS")).isEqualTo("CANCELLED");
        assertThat(value(read, "SEQUENCE")).isEqualTo("9");
    }

    /** Half past two on each day of a year: on two of them the clocks change, by the zone database of java.time. */
    @ParameterizedTest
    @CsvSource({"Australia/Lord_Howe", "Australia/Sydney", "America/New_York"})
    void anHourIsTheHourOfTheZoneOnDaysWhenTheClocksChange(String name) throws Exception {
        ZoneId zone = ZoneId.of(name);
        LocalDate first = LocalDate.of(2025, 1, 1);
        LocalTime hour = LocalTime.of(2, 15);
        List<TaskEvent> events = tasks(first, zone, Rhythm.daily, 364, hour).stream()
                .map(task -> event(task, false, 0))
                .toList();
        String text = CalendarText.write(events);

        ICalendar read = Biweekly.parse(text).first();
        List<CalendarComponent> other = readByAnother(text).getComponents("VEVENT");
        List<LocalDate> changes = new ArrayList<>();
        for (int day = 0; day < 365; day++) {
            LocalDate date = first.plusDays(day);
            Instant expected = date.atTime(hour).atZone(zone).toInstant();
            assertThat(read.getEvents().get(day).getDateStart().getValue().toInstant())
                    .as("%s", date)
                    .isEqualTo(expected);
            assertThat(value(other.get(day), "DTSTART"))
                    .isEqualTo(expected.toString().replaceAll("[-:]", ""));
            ZoneOffsetTransition next =
                    zone.getRules().nextTransition(date.atStartOfDay(zone).toInstant());
            if (next.getInstant().isBefore(date.plusDays(1).atStartOfDay(zone).toInstant())) {
                changes.add(date);
            }
        }
        assertThat(changes).as("days on which the clocks change").hasSize(2);
    }

    /** RFC 5545, section 3.1: lines of up to 75 octets that end with CRLF, and folds of CRLF and a space. */
    @Test
    void linesAreFoldedAndTextsEscaped() throws Exception {
        List<TaskEvent> events = tasks(LocalDate.of(2026, 1, 1), ZoneId.of("UTC"), Rhythm.daily, 9, null).stream()
                .map(task -> event(task, false, 0))
                .toList();
        String text = CalendarText.write(events);

        assertThat(text).endsWith("END:VCALENDAR\r\n");
        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
        List<String> lines = Arrays.asList(text.split("\r\n"));
        assertThat(lines).allMatch(line -> line.getBytes(StandardCharsets.UTF_8).length <= 75);
        assertThat(lines).anyMatch(line -> line.startsWith(" "));
        // Section 3.3.11: a comma of a text is escaped
        assertThat(text.replace("\r\n ", "")).contains("DESCRIPTION:What to do\\, in the vet's words\\, stands");
        String words =
                "What to do, in the vet's words, stands on your care day. If it is worse than yesterday, ring the clinic.";
        assertThat(value(
                        readByAnother(text)
                                .<CalendarComponent>getComponents("VEVENT")
                                .get(0),
                        "DESCRIPTION"))
                .isEqualTo(words);
        assertThat(Biweekly.parse(text).first().getEvents())
                .hasSize(10)
                .allMatch(read -> read.getDescription().getValue().equals(words));
        // Throws where it is no iCalendar
        readByAnother(text).validate();
        assertThat(CalendarText.write(events)).isEqualTo(text);
    }
}
