package org.culvert.care.calendar;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.property.Classification;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.Status;
import biweekly.util.DateTimeComponents;
import biweekly.util.Duration;
import biweekly.util.ICalDate;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;

/**
 * Writes tasks as iCalendar (RFC 5545). A task with an hour begins at that instant, written in UTC, so that no reader needs to know
 * the region's zone; any other lasts whole days. Nothing depends on when it is written: DTSTAMP is when the task was changed last,
 * as section 3.8.7.2 has it where there is no METHOD.
 *
 * <p>Of a task only the number of its case and the key of its step are told: what vets say in words may name people and places.
 */
final class CalendarText {
    private static final String PRODUCT = "-//Culvert//Care tasks//EN";
    private static final String WORDS =
            "What to do, in the vet's words, stands on your care day. If it is worse than yesterday, ring the clinic.";

    private CalendarText() {}

    static String write(List<TaskEvent> events) {
        var calendar = new ICalendar();
        calendar.setProductId(PRODUCT);
        // RFC 7986, sections 5.1 and 5.7
        calendar.setName("Care tasks");
        calendar.setRefreshInterval(Duration.builder().hours(1).build()).setParameter("VALUE", "DURATION");
        events.forEach(event -> calendar.addEvent(component(event)));
        return Biweekly.write(calendar).go();
    }

    private static VEvent component(TaskEvent told) {
        var event = new VEvent();
        event.setUid(told.uid().toString());
        event.setSequence(told.sequence());
        event.setDateTimeStamp(instant(told.changedAt()));
        event.setLastModified(instant(told.changedAt()));
        event.setSummary(
                "Case " + told.caseNumber() + ": " + told.task().step().key().replace('-', ' '));
        event.setDescription(WORDS);
        event.setClassification(Classification.private_());
        event.setTransparency(true);
        event.setStatus(told.cancelled() ? Status.cancelled() : Status.confirmed());
        if (told.task().step().hour() == null) {
            event.setDateStart(new DateStart(date(told.task().date())));
            event.setDateEnd(new DateEnd(date(told.task().lastDate().plusDays(1))));
        } else {
            event.setDateStart(new DateStart(instant(told.task().dueFrom())));
        }
        return event;
    }

    /** A date of no zone: its components are written as they are. */
    private static ICalDate date(LocalDate day) {
        return new ICalDate(
                new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth(), 0, 0, 0, false), false);
    }

    /** A second of UTC; what is below a second iCalendar cannot say. */
    private static ICalDate instant(Instant at) {
        ZonedDateTime utc = at.atZone(ZoneOffset.UTC);
        return new ICalDate(
                new DateTimeComponents(
                        utc.getYear(),
                        utc.getMonthValue(),
                        utc.getDayOfMonth(),
                        utc.getHour(),
                        utc.getMinute(),
                        utc.getSecond(),
                        true),
                true);
    }
}
