package org.culvert.web.care;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.care.day.CareDayView;
import org.culvert.care.plan.AftercarePlanView.TaskState;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.AftercarePlanView.WeightTrendView;
import org.culvert.care.plan.CareEntryView;
import org.culvert.care.plan.CareEntryView.Flag;
import org.culvert.care.schedule.Measure;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.CareForm;
import org.culvert.web.RegionTimes;
import org.culvert.web.words.CareDayWords;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a carer's day.
 *
 * @param callSign null for who may not see it
 * @param isToCome whether the day is still to come, so that nothing can be entered of it
 * @param key what the keys of its forms begin with, so that each is taken once
 */
public record CareDayPage(
        UUID memberId,
        @Nullable String callSign,
        LocalDate date,
        String dateWords,
        boolean isToday,
        boolean isToCome,
        String key,
        LocalDate before,
        LocalDate after,
        String note,
        List<Animal> animals) {
    /** @param typed what was sent of it beside its plan, and not taken */
    public record Animal(
            UUID id,
            long number,
            String name,
            String scientificName,
            @Nullable String limits,
            @Nullable String review,
            boolean reviewOver,
            @Nullable String clinic,
            @Nullable String dischargeWords,
            @Nullable String planWords,
            boolean hasPlan,
            List<TaskCard> open,
            List<String> done,
            @Nullable String weight,
            boolean falls,
            List<Picture> photographs,
            @Nullable Typing typed) {}

    /** A photograph of an animal that an entry may name. */
    public record Picture(String id, String words) {}

    /**
     * A task to be done.
     *
     * @param toCome whether its first day is still to come, so that it cannot be done yet
     * @param kind {@code number}, {@code answer}, {@code photograph} or {@code tick}
     * @param typed what was sent of it and not taken
     */
    public record TaskCard(
            String id,
            String stepKey,
            int day,
            String words,
            String when,
            boolean overdue,
            boolean toCome,
            String kind,
            String unit,
            String unitWords,
            @Nullable String limits,
            @Nullable Typing typed) {}

    /** What was typed into a form that was not taken, and why not. */
    public record Typing(
            String value,
            String words,
            String skippedBecause,
            String at,
            String kind,
            String photographId,
            List<FieldError> errors) {}

    /** Reads a day as a page tells it, in one language. */
    record Teller(
            CareDayWords words,
            Locale locale,
            ZoneId zone,
            LocalDate today,
            Map<UUID, Map<String, String>> photographs,
            @Nullable CareForm sent,
            List<FieldError> errors) {
        private String format(String pattern, TemporalAccessor at) {
            return RegionTimes.format(pattern, locale.toLanguageTag()).format(at);
        }

        CareDayPage tell(CareDayView day, boolean namesMember) {
            return new CareDayPage(
                    day.memberId(),
                    namesMember ? day.callSign() : null,
                    day.date(),
                    format(locale.getLanguage().equals("de") ? "EEEE, d MMMM yyyy" : "EEEE d MMMM yyyy", day.date()),
                    day.date().equals(today),
                    day.date().isAfter(today),
                    UUID.randomUUID().toString(),
                    day.date().minusDays(1),
                    day.date().plusDays(1),
                    day.note(),
                    day.animals().stream()
                            .map(animal -> animal(animal, day.date()))
                            .toList());
        }

        private Animal animal(CareDayView.HeldAnimalView animal, LocalDate date) {
            WeightTrendView trend = animal.weightTrend();
            return new Animal(
                    animal.id(),
                    animal.caseNumber(),
                    animal.vernacularName(),
                    animal.scientificName(),
                    animal.limits(),
                    animal.reviewOn() == null ? null : format("d MMMM yyyy", animal.reviewOn()),
                    animal.reviewOn() != null && animal.reviewOn().isBefore(date),
                    animal.clinicName(),
                    animal.dischargePlan(),
                    animal.planWords(),
                    animal.planId() != null,
                    animal.tasks().stream()
                            .filter(task -> task.entryId() == null && task.state() != TaskState.lapsed)
                            .map(task -> card(animal.id(), task, date))
                            .toList(),
                    animal.entries().stream().map(this::done).toList(),
                    trend == null ? null : weight(trend),
                    animal.entries().stream().anyMatch(entry -> entry.flags().contains(Flag.fallsFast)),
                    photographs.getOrDefault(animal.id(), Map.of()).entrySet().stream()
                            .map(one -> new Picture(one.getKey(), one.getValue()))
                            .toList(),
                    sent != null && sent.isBeside(animal.id()) ? typing(sent) : null);
        }

        private TaskCard card(UUID animal, TaskView task, LocalDate date) {
            boolean overdue = task.lastDate().isBefore(date) || task.state() == TaskState.overdue;
            return new TaskCard(
                    "t-" + animal + "-" + task.stepKey() + "-" + task.day(),
                    task.stepKey(),
                    task.day(),
                    task.words(),
                    when(task, overdue),
                    overdue,
                    task.date().isAfter(today),
                    task.measure().isNumber()
                            ? "number"
                            : task.measure() == Measure.yesNo
                                    ? "answer"
                                    : task.measure() == Measure.photograph ? "photograph" : "tick",
                    task.unit(),
                    switch (task.measure()) {
                        case minutes -> words.minutes();
                        case grams -> words.grams();
                        case degreesCelsius -> words.degreesCelsius();
                        case millimetres -> words.millimetres();
                        case yesNo, photograph, none -> "";
                    },
                    limits(task),
                    sent != null && sent.isOf(animal, task.stepKey(), task.day()) ? typing(sent) : null);
        }

        private Typing typing(CareForm form) {
            Map<String, String> typed = form.typed();
            return new Typing(
                    typed.getOrDefault("value", ""),
                    typed.getOrDefault("words", ""),
                    typed.getOrDefault("skippedBecause", ""),
                    typed.getOrDefault("at", ""),
                    typed.getOrDefault("kind", ""),
                    typed.getOrDefault("photographId", ""),
                    errors);
        }

        private String shortDay(LocalDate day) {
            return format(locale.getLanguage().equals("de") ? "EEEE, d MMMM" : "EEEE d MMMM", day);
        }

        private String when(TaskView task, boolean overdue) {
            if (overdue) {
                return words.wasDue(shortDay(task.lastDate()))
                        + (task.missesInARow() > 1 ? "; " + words.missed(task.missesInARow()) : "");
            }
            if (task.lastDate().isAfter(task.date())) {
                return words.onceBy(shortDay(task.lastDate()));
            }
            Instant midnight = task.date().atStartOfDay(zone).toInstant();
            String day = task.date().equals(today) ? words.todayWord() : words.onDay(shortDay(task.date()));
            return task.dueFrom().equals(midnight)
                    ? day
                    : day + ", " + words.fromTime(format("HH:mm", task.dueFrom().atZone(zone)));
        }

        private @Nullable String limits(TaskView task) {
            Double low = task.low();
            Double high = task.high();
            if (low != null && high != null) {
                return words.between(number(low), number(high), task.unit());
            }
            if (low != null) {
                return words.notBelow(number(low), task.unit());
            }
            return high == null ? null : words.notAbove(number(high), task.unit());
        }

        private String done(CareEntryView entry) {
            String what = entry.stepWords() != null
                    ? entry.stepWords()
                    : words.kindDone(entry.kind().name());
            List<String> said = new ArrayList<>();
            if (entry.skippedBecause() != null) {
                said.add(words.skipped(entry.skippedBecause()));
            } else if (entry.stepWords() != null) {
                said.add(entry.doneLate() ? words.doneLate() : words.doneWord());
            }
            if (entry.value() != null) {
                said.add(number(entry.value()) + " " + Objects.requireNonNullElse(entry.unit(), ""));
            }
            if (entry.answer() != null) {
                said.add(entry.answer() ? words.answerYes() : words.answerNo());
            }
            if (entry.words() != null) {
                said.add(entry.words());
            }
            entry.flags().forEach(flag -> said.add(words.flag(flag.name())));
            return format("HH:mm", entry.at().atZone(zone)) + " " + what + " – " + String.join("; ", said);
        }

        private String weight(WeightTrendView trend) {
            Double low = trend.lowGramsPerDay();
            Double high = trend.highGramsPerDay();
            return words.weight(
                            trend.overDays(), trend.weighings(), String.format(locale, "%+.1f", trend.percentPerWeek()))
                    + (low == null || high == null
                            ? words.weightUnsure()
                            : " "
                                    + words.weightSure(
                                            String.format(locale, "%+.1f", low), String.format(locale, "%+.1f", high)));
        }

        private String number(double number) {
            return number == Math.rint(number) && Math.abs(number) < 1e9
                    ? String.format(locale, "%.0f", number)
                    : String.format(locale, "%.1f", number);
        }
    }
}
