package org.culvert.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a carer's day.
 *
 * @param isToCome whether the day is still to come, so that nothing can be entered of it
 * @param key what the keys of its forms begin with, so that each is taken once
 */
public record CareDayPage(
        UUID memberId,
        LocalDate date,
        String dateWords,
        boolean isToday,
        boolean isToCome,
        String key,
        LocalDate before,
        LocalDate after,
        String note,
        List<Animal> animals) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    /** @param typed what was sent of it beside its plan, and not taken */
    public record Animal(
            UUID id,
            long number,
            String name,
            String scientificName,
            @Nullable String limits,
            @Nullable String review,
            @Nullable String clinic,
            @Nullable String dischargeWords,
            @Nullable String planWords,
            boolean hasPlan,
            List<TaskCard> open,
            List<String> done,
            @Nullable String weight,
            boolean falls,
            @Nullable Typing typed) {}

    /**
     * A task to be done.
     *
     * @param toCome whether its first day is still to come, so that it cannot be done yet
     * @param kind {@code number}, {@code answer} or {@code tick}
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
            boolean skipped,
            List<FieldError> errors) {}

    static CareDayPage of(
            CareDayView day, LocalDate today, ZoneId zone, @Nullable CareForm sent, List<FieldError> errors) {
        List<Animal> animals = new ArrayList<>();
        for (CareDayView.HeldAnimalView animal : day.animals()) {
            animals.add(animal(animal, day.date(), today, zone, sent, errors));
        }
        return new CareDayPage(
                day.memberId(),
                day.date(),
                DAY.format(day.date()),
                day.date().equals(today),
                day.date().isAfter(today),
                UUID.randomUUID().toString(),
                day.date().minusDays(1),
                day.date().plusDays(1),
                day.note(),
                animals);
    }

    private static Animal animal(
            CareDayView.HeldAnimalView animal,
            LocalDate date,
            LocalDate today,
            ZoneId zone,
            @Nullable CareForm sent,
            List<FieldError> errors) {
        List<TaskCard> open = new ArrayList<>();
        for (TaskView task : animal.tasks()) {
            if (task.entryId() == null && task.state() != TaskState.lapsed) {
                open.add(card(animal.id(), task, date, today, zone, sent, errors));
            }
        }
        WeightTrendView trend = animal.weightTrend();
        return new Animal(
                animal.id(),
                animal.caseNumber(),
                animal.vernacularName(),
                animal.scientificName(),
                animal.limits(),
                animal.reviewOn() == null ? null : DATE.format(animal.reviewOn()),
                animal.clinicName(),
                animal.dischargePlan(),
                animal.planWords(),
                animal.planId() != null,
                open,
                animal.entries().stream().map(entry -> done(entry, zone)).toList(),
                trend == null ? null : weight(trend),
                animal.entries().stream().anyMatch(entry -> entry.flags().contains(Flag.fallsFast)),
                sent != null && sent.isBeside(animal.id()) ? typing(sent, errors) : null);
    }

    private static TaskCard card(
            UUID animal,
            TaskView task,
            LocalDate date,
            LocalDate today,
            ZoneId zone,
            @Nullable CareForm sent,
            List<FieldError> errors) {
        boolean overdue = task.lastDate().isBefore(date) || task.state() == TaskState.overdue;
        return new TaskCard(
                "t-" + animal + "-" + task.stepKey() + "-" + task.day(),
                task.stepKey(),
                task.day(),
                task.words(),
                when(task, overdue, today, zone),
                overdue,
                task.date().isAfter(today),
                task.measure().isNumber() ? "number" : task.measure() == Measure.yesNo ? "answer" : "tick",
                task.unit(),
                switch (task.measure()) {
                    case minutes -> "minutes";
                    case grams -> "grams";
                    case degreesCelsius -> "degrees Celsius";
                    case millimetres -> "millimetres";
                    case yesNo, photograph, none -> "";
                },
                limits(task),
                sent != null && sent.isOf(animal, task.stepKey(), task.day()) ? typing(sent, errors) : null);
    }

    private static Typing typing(CareForm sent, List<FieldError> errors) {
        return new Typing(
                Objects.requireNonNullElse(sent.value, ""),
                Objects.requireNonNullElse(sent.words, ""),
                Objects.requireNonNullElse(sent.skippedBecause, ""),
                Objects.requireNonNullElse(sent.at, ""),
                Objects.requireNonNullElse(sent.kind, ""),
                Objects.equals(sent.act, "skip"),
                errors);
    }

    private static String when(TaskView task, boolean overdue, LocalDate today, ZoneId zone) {
        if (overdue) {
            return "Was due on " + SHORT_DAY.format(task.lastDate())
                    + (task.missesInARow() > 1 ? "; missed " + task.missesInARow() + " times in a row" : "");
        }
        Instant midnight = task.date().atStartOfDay(zone).toInstant();
        String from = task.dueFrom().equals(midnight)
                ? ""
                : "from " + TIME.format(task.dueFrom().atZone(zone));
        if (task.lastDate().isAfter(task.date())) {
            return "Once, by " + SHORT_DAY.format(task.lastDate());
        }
        String day = task.date().equals(today) ? "Today" : "On " + SHORT_DAY.format(task.date());
        return from.isEmpty() ? day : day + ", " + from;
    }

    private static @Nullable String limits(TaskView task) {
        String unit = " " + task.unit();
        if (task.low() != null && task.high() != null) {
            return number(task.low()) + " to " + number(task.high()) + unit;
        }
        if (task.low() != null) {
            return "not below " + number(task.low()) + unit;
        }
        return task.high() == null ? null : "not above " + number(task.high()) + unit;
    }

    private static String done(CareEntryView entry, ZoneId zone) {
        String what = entry.stepWords() != null
                ? entry.stepWords()
                : kindWords(entry.kind().name());
        List<String> said = new ArrayList<>();
        if (entry.skippedBecause() != null) {
            said.add("skipped: " + entry.skippedBecause());
        } else if (entry.stepWords() != null) {
            said.add(entry.doneLate() ? "done late" : "done");
        }
        if (entry.value() != null) {
            said.add(number(entry.value()) + " " + Objects.requireNonNullElse(entry.unit(), ""));
        }
        if (entry.answer() != null) {
            said.add(entry.answer() ? "yes" : "no");
        }
        if (entry.words() != null) {
            said.add(entry.words());
        }
        entry.flags().forEach(flag -> said.add(flagWords(flag)));
        return TIME.format(entry.at().atZone(zone)) + " " + what + " – " + String.join("; ", said);
    }

    private static String flagWords(Flag flag) {
        return switch (flag) {
            case belowLow -> "below the vet's limit: ring the clinic";
            case aboveHigh -> "above the vet's limit: ring the clinic";
            case flaggedAnswer -> "the vet wants to hear of that: ring the clinic";
            case fallsFast -> "the weight falls faster than the vet's limit: ring the clinic";
        };
    }

    static String kindWords(String kind) {
        return switch (kind) {
            case "weight" -> "Weight";
            case "food" -> "Food";
            case "wound" -> "Wound";
            case "photograph" -> "Photograph";
            default -> "Note";
        };
    }

    private static String weight(WeightTrendView trend) {
        return String.format(
                Locale.ROOT,
                "Weight over %d days, from %d weighings: %+.1f %% a week%s.",
                trend.overDays(),
                trend.weighings(),
                trend.percentPerWeek(),
                trend.lowGramsPerDay() == null || trend.highGramsPerDay() == null
                        ? ", too few to say how sure that is"
                        : String.format(
                                Locale.ROOT,
                                " (%+.1f to %+.1f g a day at 95 %%)",
                                trend.lowGramsPerDay(),
                                trend.highGramsPerDay()));
    }

    private static String number(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e9
                ? String.format(Locale.ROOT, "%.0f", number)
                : String.format(Locale.ROOT, "%.1f", number);
    }
}
