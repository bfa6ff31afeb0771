package org.culvert.web.hand;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.care.plan.CareEntryView;
import org.culvert.care.plan.CareEntryView.Flag;
import org.culvert.care.plan.PlanEntries.CareKind;
import org.culvert.web.words.HandWords;

/** What was entered, in one line. */
final class EntryWords {
    private EntryWords() {}

    static boolean falls(List<CareEntryView> entries) {
        return entries.stream().anyMatch(entry -> entry.flags().contains(Flag.fallsFast));
    }

    static String of(CareEntryView entry, HandTongue tongue) {
        HandWords words = tongue.words();
        List<String> said = new ArrayList<>();
        if (entry.skippedBecause() != null) {
            said.add(words.entrySkipped(entry.skippedBecause()));
        } else if (entry.stepWords() != null) {
            said.add(entry.doneLate() ? words.entryLate() : words.entryDone());
        }
        if (entry.value() != null) {
            said.add(tongue.number(entry.value(), 1) + " " + Objects.requireNonNullElse(entry.unit(), ""));
        }
        if (entry.answer() != null) {
            said.add(entry.answer() ? words.yes() : words.no());
        }
        if (entry.words() != null) {
            said.add(entry.words());
        }
        if (!entry.flags().isEmpty()) {
            said.add(words.ringTheClinicForThis());
        }
        if (entry.withdrawnAt() != null) {
            said.add(words.entryWithdrawn());
        }
        String about = entry.stepWords() == null ? kind(entry.kind(), words) : entry.stepWords();
        return tongue.time(entry.at()) + " " + about + " – " + String.join("; ", said);
    }

    private static String kind(CareKind kind, HandWords words) {
        return switch (kind) {
            case weight -> words.aboutWeight();
            case food -> words.aboutFood();
            case wound -> words.aboutWound();
            case photograph -> words.photograph();
            case note, task -> words.aboutNote();
        };
    }
}
