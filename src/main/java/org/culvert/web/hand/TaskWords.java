package org.culvert.web.hand;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.care.day.CareDayView;
import org.culvert.care.plan.AftercarePlanView.TaskState;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.schedule.Measure;
import org.culvert.web.words.HandWords;
import org.jspecify.annotations.Nullable;

/** Tasks of a day as cards. */
record TaskWords(HandTongue tongue, LocalDate day, Instant now) {
    boolean isOverdue(TaskView task) {
        return task.lastDate().isBefore(day) || task.state() == TaskState.overdue;
    }

    boolean isLater(TaskView task) {
        return task.dueFrom().isAfter(now);
    }

    HandPages.Card card(CareDayView.HeldAnimalView animal, TaskView task, Sent sent, Map<String, String> photographs) {
        String id = "t-" + animal.id() + "-" + task.stepKey() + "-" + task.day();
        HandWords words = tongue.words();
        return new HandPages.Card(
                id,
                task.words(),
                words.caseNamed(animal.caseNumber(), animal.vernacularName()) + ". " + when(task),
                isOverdue(task),
                null,
                null,
                new HandPages.TaskForm(
                        id,
                        animal.id(),
                        task.stepKey(),
                        task.day(),
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
                        task.low() == null ? null : task.low().toString(),
                        task.high() == null ? null : task.high().toString(),
                        photographs(photographs, sent.of(id)),
                        sent.of(id)),
                null);
    }

    static List<HandPages.Choice> photographs(Map<String, String> named, Sent sent) {
        return named.entrySet().stream()
                .map(one -> new HandPages.Choice(
                        one.getKey(), one.getValue(), one.getKey().equals(sent.typed("photographId"))))
                .toList();
    }

    private String when(TaskView task) {
        HandWords words = tongue.words();
        if (isOverdue(task)) {
            List<String> said = new ArrayList<>();
            said.add(words.wasDue(tongue.day(task.lastDate())));
            if (task.missesInARow() > 1) {
                said.add(words.missed(task.missesInARow()));
            }
            return String.join("; ", said);
        }
        if (task.lastDate().isAfter(task.date())) {
            return words.onceBy(tongue.day(task.lastDate()));
        }
        Instant midnight = task.date().atStartOfDay(tongue.zone()).toInstant();
        return task.dueFrom().equals(midnight) ? words.today() : words.todayFrom(tongue.time(task.dueFrom()));
    }

    private @Nullable String limits(TaskView task) {
        HandWords words = tongue.words();
        Double low = task.low();
        Double high = task.high();
        if (low != null && high != null) {
            return words.vetsLimits(words.between(tongue.number(low, 1), tongue.number(high, 1), task.unit()));
        }
        if (low != null) {
            return words.vetsLimits(words.notBelow(tongue.number(low, 1), task.unit()));
        }
        return high == null ? null : words.vetsLimits(words.notAbove(tongue.number(high, 1), task.unit()));
    }
}
