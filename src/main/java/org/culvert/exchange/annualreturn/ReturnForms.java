package org.culvert.exchange.annualreturn;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.jspecify.annotations.Nullable;

/** Keeps the forms of authorities: which days, which columns, which words, and what counts as one. */
@ApplicationScoped
public class ReturnForms {
    /** What every form and every return says of itself. */
    public static final String NOTE =
            "This counts what was entered here, and is no advice on the law: check your local code.";

    /** What a column shows. */
    public enum Shows {
        scientificName,
        vernacularName,
        /** An animal, a hatchling, a body, or eggs. */
        kind,
        opening,
        cameIn,
        cameInFound,
        cameInOfMother,
        cameInHatched,
        cameInSet,
        cameInTransferred,
        cameInAfterGap,
        wentOut,
        wentOutTransferred,
        wentOutIntoGap,
        /** One column for each word of the vocabulary, in the order of the words; the heading stands before it. */
        wentOutByWord,
        closing
    }

    /** How it ends: of an animal its fate, of eggs whether they hatched or failed. */
    public enum End {
        released,
        died,
        euthanased,
        deadWhenFound,
        diedOnTheWay,
        deadOnReachingClinic,
        leftWell,
        escaped,
        unknown,
        hatched,
        failed
    }

    private static final int EARLIEST_YEAR = 1900;
    private static final int LATEST_YEAR = 9000;

    private static final Set<Shows> NEEDED =
            Set.of(Shows.scientificName, Shows.kind, Shows.opening, Shows.cameIn, Shows.wentOut, Shows.closing);
    private static final Set<End> OF_EGGS = Set.of(End.hatched, End.failed);

    public record ReturnColumn(
            @NotNull Shows shows, @NotBlank @Size(max = 200) String heading) {}

    /** The authority's word for an end. */
    public record ReturnWord(
            @NotNull End end, @NotBlank @Size(max = 200) String word) {}

    /**
     * A period, in days of the region.
     *
     * @param to its last day
     * @param due the last day on which its return may arrive
     */
    public record ReturnPeriod(
            @NotNull LocalDate from,
            @NotNull LocalDate to,
            @NotNull LocalDate due) {}

    /**
     * A form as entered.
     *
     * @param jurisdiction ISO 3166 code of a country or of a part of one; {@code XX} for an example of no authority
     * @param startMonth with {@code startDay} the first day of each year of the form; left out where {@code periods} tell
     * @param dueMonth with {@code dueDay} the first such day after the period is the day on which a return is due
     * @param periods told one by one, where they are not years
     * @param columns in the order of the form; without the sums nobody could check it
     * @param vocabulary a word for every fate, and for what becomes of eggs where they count
     * @param countsEggs whether an egg counts as one, from when it is set to incubate
     * @param countsHatchlings whether what hatched in care counts as one
     * @param countsBodies whether an animal that was dead before it reached care counts as one
     * @param countsMembers whether an organisation answers for what its members hold
     * @param reviewBy the day from which the source wants reading again
     */
    public record ReturnFormEntry(
            @NotNull @Pattern(regexp = "[A-Z]{2}(-[A-Z0-9]{1,3})?", message = "must be an ISO 3166 code such as AU-VIC")
            String jurisdiction,

            @NotBlank @Size(max = 500) String title,
            @Nullable @Min(1) @Max(12) Integer startMonth,
            @Nullable @Min(1) @Max(31) Integer startDay,
            @Nullable @Min(1) @Max(12) Integer dueMonth,
            @Nullable @Min(1) @Max(31) Integer dueDay,
            @Size(max = 200) List<@NotNull @Valid ReturnPeriod> periods,
            @NotEmpty @Size(max = 60) List<@NotNull @Valid ReturnColumn> columns,
            @NotEmpty @Size(max = 60) List<@NotNull @Valid ReturnWord> vocabulary,
            @NotNull Boolean countsEggs,
            @NotNull Boolean countsHatchlings,
            @NotNull Boolean countsBodies,
            @NotNull Boolean countsMembers,
            @NotBlank @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @NotNull LocalDate validFrom,
            @Nullable LocalDate validTo) {
        public ReturnFormEntry {
            periods = periods == null ? List.of() : periods;
        }
    }

    /**
     * Someone has read the source of a form again.
     *
     * @param source what was read, where it is another edition; left out: the same
     * @param validTo the first day on which it no longer holds, where the source says so; what holds instead is a new form
     */
    public record ReturnFormReview(
            @Nullable @Size(max = 4000) String source,
            @NotNull LocalDate readOn,
            @NotNull LocalDate reviewBy,
            @Nullable LocalDate validTo,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A form as shown.
     *
     * @param reviewDue whether its source should have been read again by now
     */
    public record ReturnFormView(
            UUID id,
            String jurisdiction,
            String title,
            @Nullable Integer startMonth,
            @Nullable Integer startDay,
            @Nullable Integer dueMonth,
            @Nullable Integer dueDay,
            List<ReturnPeriod> periods,
            List<ReturnColumn> columns,
            List<ReturnWord> vocabulary,
            boolean countsEggs,
            boolean countsHatchlings,
            boolean countsBodies,
            boolean countsMembers,
            String source,
            LocalDate readOn,
            LocalDate reviewBy,
            LocalDate validFrom,
            @Nullable LocalDate validTo,
            boolean reviewDue,
            String note,
            RecordView record) {}

    @ApplicationScoped
    static class Forms implements PanacheRepositoryBase<ReturnForm, UUID> {}

    private final Forms forms;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    ReturnForms(Forms forms, RegionService regions, RecordViews records, Clock clock) {
        this.forms = forms;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    @Transactional
    public ReturnFormView createForm(ReturnFormEntry entry) {
        requireDays(entry);
        requireColumns(entry);
        requireWords(entry);
        requireDates(entry.readOn(), entry.reviewBy(), entry.validFrom(), entry.validTo());
        ReturnForm row = ReturnForm.of(entry);
        forms.persistAndFlush(row);
        return getForm(row.id());
    }

    /** Records that the source was read again, and on what day it wants reading next. */
    @Transactional
    public ReturnFormView review(UUID id, ReturnFormReview review) {
        ReturnForm row = require(id);
        requireDates(review.readOn(), review.reviewBy(), row.validFrom, review.validTo());
        row.review(review);
        forms.flush();
        return getForm(id);
    }

    @Transactional
    public ReturnFormView getForm(UUID id) {
        return view(require(id));
    }

    /** All forms, those of other places and days too, in a stable order. */
    @Transactional
    public List<ReturnFormView> listForms() {
        List<ReturnForm> rows = forms.list("order by jurisdiction, id");
        records.lookUp(rows);
        return rows.stream().map(this::view).toList();
    }

    ReturnForm require(UUID id) {
        return forms.findByIdOptional(id).orElseThrow(() -> new NotFoundException("return form", id));
    }

    /**
     * The period of a form that begins on a day.
     *
     * @throws InvalidException naming {@code from} if none does, or if the form did not hold then
     */
    static ReturnPeriod period(ReturnForm form, LocalDate from) {
        if (from.getYear() > LATEST_YEAR) {
            throw InvalidException.of("from", "No such year is meant.", "a year up to " + LATEST_YEAR);
        }
        if (from.isBefore(form.validFrom) || form.validTo != null && !from.isBefore(form.validTo)) {
            throw InvalidException.of(
                    "from",
                    "The form did not hold on that day.",
                    "a day from " + form.validFrom + " on" + (form.validTo == null ? "" : ", before " + form.validTo));
        }
        if (form.startMonth == null) {
            List<ReturnPeriod> periods = form.periods();
            return periods.stream()
                    .filter(period -> period.from().equals(from))
                    .findFirst()
                    .orElseThrow(() -> InvalidException.of(
                            "from",
                            "No period of the form begins on that day.",
                            periods.stream()
                                    .map(period -> period.from().toString())
                                    .collect(Collectors.joining(", "))));
        }
        MonthDay start = MonthDay.of(form.startMonth, Objects.requireNonNull(form.startDay));
        if (!MonthDay.from(from).equals(start)) {
            throw InvalidException.of(
                    "from", "No year of the form begins on that day.", "such as " + start.atYear(from.getYear()));
        }
        LocalDate to = from.plusYears(1).minusDays(1);
        MonthDay due = MonthDay.of(Objects.requireNonNull(form.dueMonth), Objects.requireNonNull(form.dueDay));
        LocalDate dueOn = due.atYear(to.getYear());
        return new ReturnPeriod(from, to, dueOn.isAfter(to) ? dueOn : due.atYear(to.getYear() + 1));
    }

    private static void requireDays(ReturnFormEntry entry) {
        boolean years = entry.periods().isEmpty();
        requireDay("startDay", years, entry.startMonth(), entry.startDay());
        requireDay("dueDay", years, entry.dueMonth(), entry.dueDay());
        LocalDate last = null;
        for (ReturnPeriod period : entry.periods()) {
            if (period.from().getYear() < EARLIEST_YEAR || period.due().getYear() > LATEST_YEAR) {
                throw InvalidException.of(
                        "periods", "No such years are meant.", "years from " + EARLIEST_YEAR + " to " + LATEST_YEAR);
            }
            if (period.to().isBefore(period.from())) {
                throw InvalidException.of("periods", "A period ends before it begins.", "from, then to");
            }
            if (!period.due().isAfter(period.to())) {
                throw InvalidException.of("periods", "A return is due before its period is over.", "to, then due");
            }
            if (last != null && !period.from().isAfter(last)) {
                throw InvalidException.of(
                        "periods", "Two periods overlap, or are not in order.", "one after the other");
            }
            last = period.to();
        }
    }

    private static void requireDay(String field, boolean wanted, @Nullable Integer month, @Nullable Integer day) {
        if (wanted != (month != null) || wanted != (day != null)) {
            throw InvalidException.of(
                    field,
                    "A form is of years or of periods.",
                    "a month and a day to begin with and to be due on, or else periods");
        }
        if (month == null || day == null) {
            return;
        }
        try {
            if (MonthDay.of(month, day).isValidYear(2025)) {
                return;
            }
        } catch (DateTimeException noDay) {
            throw InvalidException.of(field, "There is no such day.", "a day that every year has");
        }
        throw InvalidException.of(field, "Not every year has such a day.", "a day that every year has");
    }

    private static void requireColumns(ReturnFormEntry entry) {
        Set<Shows> shown = entry.columns().stream().map(ReturnColumn::shows).collect(Collectors.toUnmodifiableSet());
        if (!shown.containsAll(NEEDED)) {
            throw InvalidException.of(
                    "columns",
                    "Nobody could check such a form.",
                    "at least " + NEEDED.stream().map(Enum::name).sorted().collect(Collectors.joining(", ")));
        }
        Set<String> headings = new HashSet<>();
        for (ReturnColumn column : entry.columns()) {
            if (!headings.add(column.heading())) {
                throw InvalidException.of("columns", "Two columns have one heading.", "a heading for each");
            }
        }
    }

    private static void requireWords(ReturnFormEntry entry) {
        Set<End> told = new HashSet<>();
        for (ReturnWord word : entry.vocabulary()) {
            if (!told.add(word.end())) {
                throw InvalidException.of("vocabulary", word.end() + " has two words.", "one word for each");
            }
        }
        String missing = Arrays.stream(End.values())
                .filter(end -> !told.contains(end) && (entry.countsEggs() || !OF_EGGS.contains(end)))
                .map(Enum::name)
                .collect(Collectors.joining(", "));
        if (!missing.isEmpty()) {
            throw InvalidException.of("vocabulary", "There is no word for " + missing + ".", "one word for each");
        }
    }

    private static void requireDates(
            LocalDate readOn, LocalDate reviewBy, LocalDate validFrom, @Nullable LocalDate validTo) {
        if (!reviewBy.isAfter(readOn)) {
            throw InvalidException.of("reviewBy", "It would be due at once.", "a day after readOn");
        }
        if (validTo != null && !validTo.isAfter(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day after " + validFrom);
        }
    }

    private ReturnFormView view(ReturnForm row) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), regions.zone());
        return new ReturnFormView(
                row.id(),
                row.jurisdiction,
                row.title,
                row.startMonth,
                row.startDay,
                row.dueMonth,
                row.dueDay,
                row.periods(),
                row.columns(),
                row.words(),
                row.countsEggs,
                row.countsHatchlings,
                row.countsBodies,
                row.countsMembers,
                row.source,
                row.readOn,
                row.reviewBy,
                row.validFrom,
                row.validTo,
                !row.reviewBy.isAfter(today),
                NOTE,
                records.of(row));
    }
}
