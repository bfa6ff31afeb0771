package org.culvert.animal.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.call.CallService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Looks at every animal of a form before any is taken in, so that all that is wrong is said at once. */
@ApplicationScoped
class IntakeChecks {
    private final CallService calls;
    private final TaxonService taxa;
    private final PlaceReading places;

    IntakeChecks(CallService calls, TaxonService taxa, PlaceReading places) {
        this.calls = calls;
        this.taxa = taxa;
        this.places = places;
    }

    /**
     * Takes the numbers that were written by hand.
     *
     * @param known numbers of those who were taken in before, of whom one may be a mother
     * @throws InvalidException naming each field that is wrong
     */
    void require(
            List<SurgeEntries.IntakeAnimal> animals,
            Instant at,
            Collection<String> sectors,
            TemporaryNumbers numbers,
            Set<String> known) {
        List<FieldError> errors = new ArrayList<>();
        Map<String, Boolean> isTaxon = new HashMap<>();
        Set<String> mothers = new HashSet<>(known);
        for (int i = 0; i < animals.size(); i++) {
            SurgeEntries.IntakeAnimal animal = animals.get(i);
            sector(i, animal.sector(), sectors, errors);
            String taxon = animal.taxon();
            if (taxon != null
                    && !isTaxon.computeIfAbsent(
                            taxon, name -> taxa.findByScientificName(name).isPresent())) {
                errors.add(wrong(
                        i,
                        "taxon",
                        "There is no taxon " + taxon + ".",
                        "a name from /api/taxa; none where it is not known yet"));
            }
            times(i, animal, at, errors);
            if (animal.vitality() == SurgeEntries.IntakeVitality.dead && animal.triage() != null) {
                errors.add(wrong(i, "triage", "It is dead.", "nothing, or an animal that is alive"));
            }
            String cause = animal.cause();
            if (cause != null) {
                asked(i, errors, () -> calls.requireKnownCause(cause));
            }
            PlaceAsGiven place = animal.place();
            if (place != null) {
                asked(i, errors, () -> places.understand(place));
            }
            String mother = animal.motherTemporaryNumber();
            if (mother != null && !mothers.contains(TemporaryNumbers.key(mother))) {
                errors.add(wrong(
                        i,
                        "motherTemporaryNumber",
                        "Nobody has this number.",
                        "the number of an animal that was taken in before, or stands further up with its number"));
            }
            number(i, animal.temporaryNumber(), numbers, mothers, errors);
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    private static void sector(int row, String code, Collection<String> sectors, List<FieldError> errors) {
        if (!sectors.contains(code)) {
            errors.add(wrong(
                    row,
                    "sector",
                    "This surge has no such sector.",
                    sectors.isEmpty()
                            ? "enter its sectors first"
                            : String.join(", ", sectors.stream().sorted().toList())));
        }
    }

    private static void times(int row, SurgeEntries.IntakeAnimal animal, Instant at, List<FieldError> errors) {
        Instant foundAt = animal.foundAt();
        Instant latest = foundAt == null ? at : foundAt;
        if (latest.isAfter(at)) {
            errors.add(wrong(row, "foundAt", "It came to the tent before that.", "at or before " + at));
        }
        if (animal.foundNotBefore() != null && animal.foundNotBefore().isAfter(latest)) {
            errors.add(wrong(row, "foundNotBefore", "It was found before that.", "at or before " + latest));
        }
    }

    private static void number(
            int row, @Nullable String number, TemporaryNumbers numbers, Set<String> mothers, List<FieldError> errors) {
        if (number == null) {
            return;
        }
        String by = numbers.take(number, "animal " + row + " of this form");
        if (by != null) {
            errors.add(wrong(
                    row,
                    "temporaryNumber",
                    number.strip() + " was given already, to " + by + ".",
                    "another number; none for one that the server gives"));
        }
        mothers.add(TemporaryNumbers.key(number));
    }

    private static void asked(int row, List<FieldError> errors, Runnable question) {
        try {
            question.run();
        } catch (InvalidException wrong) {
            errors.addAll(within(row, wrong));
        }
    }

    /** What is wrong with one animal, as it is called in the form. */
    static List<FieldError> within(int row, InvalidException wrong) {
        return wrong.errors().stream()
                .map(one -> new FieldError(at(row, one.field()), one.detail(), one.wanted(), one.otherReading()))
                .toList();
    }

    private static FieldError wrong(int row, String field, String detail, String wanted) {
        return new FieldError(at(row, field), detail, wanted, null);
    }

    private static String at(int row, String field) {
        return "animals[" + row + "]." + field;
    }
}
