package org.culvert.web.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.care.clutch.ClutchService;
import org.culvert.care.clutch.ClutchViews.CandlingView;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.clutch.ClutchViews.SetUpView;
import org.culvert.care.clutch.ClutchViews.TemperatureRecordView;
import org.culvert.care.clutch.TemperatureService;
import org.culvert.care.incubation.RateModel;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.forms.SentFields;
import org.culvert.web.kept.KeptLinks;
import org.culvert.web.words.ClutchWords;
import org.jspecify.annotations.Nullable;

/** Lays out what there is to say of clutches. */
@ApplicationScoped
class ClutchPages {
    private static final Duration A_DAY = Duration.ofHours(20);

    private final ClutchService clutches;
    private final TemperatureService temperatures;
    private final ClutchForms forms;
    private final CaseService cases;
    private final HolderNames holders;
    private final RegionService region;
    private final Languages languages;
    private final KeptLinks kept;
    private final Sight sight;
    private final Clock clock;

    ClutchPages(
            ClutchService clutches,
            TemperatureService temperatures,
            ClutchForms forms,
            CaseService cases,
            HolderNames holders,
            RegionService region,
            Languages languages,
            KeptLinks kept,
            Sight sight,
            Clock clock) {
        this.clutches = clutches;
        this.temperatures = temperatures;
        this.forms = forms;
        this.cases = cases;
        this.holders = holders;
        this.region = region;
        this.languages = languages;
        this.kept = kept;
        this.sight = sight;
        this.clock = clock;
    }

    private ClutchTongue tongue() {
        return new ClutchTongue(languages.words(ClutchWords.class), languages.ofPage(), region.zone());
    }

    /** Clutches that the asker may see, those of this page with eggs in them first. */
    Page<ClutchPage.Listed> list(int limit, @Nullable UUID before) {
        ClutchTongue tongue = tongue();
        Page<ClutchView> found = clutches.listClutches(limit, before);
        Map<UUID, CaseView> mothers = cases.casesById(
                found.items().stream().map(ClutchView::motherCaseId).collect(Collectors.toSet()));
        List<ClutchPage.Listed> listed = found.items().stream()
                .sorted(Comparator.comparing(clutch -> clutch.stillIncubating() == 0))
                .map(clutch -> listed(clutch, Objects.requireNonNull(mothers.get(clutch.motherCaseId())), tongue))
                .toList();
        return new Page<>(listed, found.next());
    }

    private ClutchPage.Listed listed(ClutchView clutch, CaseView mother, ClutchTongue tongue) {
        return new ClutchPage.Listed(
                clutch.id(),
                mother.number(),
                mother.animal().vernacularName(),
                clutch.stillIncubating(),
                holder(clutch, tongue),
                due(clutch, tongue));
    }

    /**
     * A clutch.
     *
     * @param sent the form that was sent and not taken
     * @param ofFile whether that was the one with a file
     */
    ClutchPage page(UUID id, SentFields sent, boolean ofFile, List<FieldError> wrong) {
        sight.requireSeen("clutch", id);
        ClutchTongue tongue = tongue();
        ClutchView clutch = clutches.getClutch(id);
        CaseView mother = cases.getCase(clutch.motherCaseId());
        Instant set = clutch.recoveries().stream()
                .filter(row -> row.withdrawnAt() == null && row.setToIncubate() > 0 && row.at() != null)
                .map(row -> Objects.requireNonNull(row.at()))
                .min(Comparator.naturalOrder())
                .orElse(null);
        List<ClutchPage.EventRow> events = ClutchEvents.of(clutch, tongue, holders);
        return new ClutchPage(
                clutch,
                mother.number(),
                mother.animal().vernacularName(),
                mother.animal().scientificName(),
                mother.body() != null,
                holder(clutch, tongue),
                due(clutch, tongue),
                ClutchPicture.draw(clutch, temperatures.series(id), set, clock.instant(), tongue),
                tongue.window(clutch.hatchWindow()),
                bed(clutch, tongue),
                tally(clutch, tongue.words()),
                events,
                sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC, Role.CARER)
                        ? forms(events, sent, ofFile, wrong)
                        : Map.of(),
                kept.waysOf("clutches", id));
    }

    private Map<String, EntryForm> forms(
            List<ClutchPage.EventRow> events, SentFields sent, boolean ofFile, List<FieldError> wrong) {
        Map<String, EntryForm> all =
                forms.all(ClutchForms.entries(events), ofFile ? SentFields.NOTHING : sent, ofFile ? List.of() : wrong);
        if (ofFile) {
            all.put("file", forms.file(sent, wrong));
        }
        return all;
    }

    private String holder(ClutchView clutch, ClutchTongue tongue) {
        return clutch.custody().stream()
                .filter(link -> link.to() == null)
                .findFirst()
                .map(link -> tongue.words().underAuthorisation(holders.of(link.holder()), link.authorisation()))
                .orElseGet(() -> tongue.words().nobody());
    }

    /** What waits today; nothing where no egg is incubating. */
    List<ClutchPage.Due> due(ClutchView clutch, ClutchTongue tongue) {
        if (clutch.stillIncubating() < 1) {
            return List.of();
        }
        List<ClutchPage.Due> due = new ArrayList<>();
        ClutchWords words = tongue.words();
        Instant now = clock.instant();
        hatching(clutch, tongue, now, due);
        Instant read = clutch.temperatures().stream()
                .filter(row -> row.withdrawnAt() == null)
                .map(TemperatureRecordView::lastAt)
                .max(Comparator.naturalOrder())
                .orElse(null);
        if (read == null) {
            due.add(new ClutchPage.Due(words.dueFirstTemperature(), true));
        } else {
            Duration since = Duration.between(read, now);
            boolean old = since.compareTo(A_DAY) > 0;
            due.add(new ClutchPage.Due(
                    old
                            ? words.dueTemperature(ClutchTongue.age(since))
                            : words.temperatureRead(ClutchTongue.age(since)),
                    since.compareTo(RateModel.LONGEST_GAP) > 0));
        }
        SetUpView bed = lastBed(clutch);
        if (bed == null) {
            due.add(new ClutchPage.Due(words.dueBed(), false));
        } else if (!bed.topMarked().equals("yes")) {
            due.add(new ClutchPage.Due(words.dueMarks(), false));
        }
        due.add(new ClutchPage.Due(
                clutch.candlings().stream()
                        .filter(row -> row.withdrawnAt() == null)
                        .map(CandlingView::at)
                        .max(Comparator.naturalOrder())
                        .map(at -> words.candledBefore(Duration.between(at, now).toDays()))
                        .orElseGet(words::neverCandled),
                false));
        if (Boolean.TRUE.equals(clutch.filmDiffers())) {
            due.add(new ClutchPage.Due(words.filmDiffers(), false));
        }
        return due;
    }

    private static void hatching(ClutchView clutch, ClutchTongue tongue, Instant now, List<ClutchPage.Due> due) {
        ClutchWords words = tongue.words();
        LocalDate today = now.atZone(tongue.zone()).toLocalDate();
        LocalDate from = clutch.hatchWindow().earliest();
        LocalDate to = clutch.hatchWindow().latest();
        if (to != null && today.isAfter(to)) {
            due.add(new ClutchPage.Due(words.hatchPast(ChronoUnit.DAYS.between(to, today)), true));
        } else if (from != null && !today.isBefore(from)) {
            due.add(new ClutchPage.Due(words.hatchNow(), true));
        } else if (from != null) {
            due.add(new ClutchPage.Due(words.hatchIn(ChronoUnit.DAYS.between(today, from)), false));
        } else if (to == null) {
            due.add(new ClutchPage.Due(words.hatchUnknown(), false));
        }
    }

    private static @Nullable SetUpView lastBed(ClutchView clutch) {
        return clutch.setUps().stream()
                .filter(one -> one.withdrawnAt() == null)
                .reduce((earlier, later) -> later)
                .orElse(null);
    }

    private static String bed(ClutchView clutch, ClutchTongue tongue) {
        SetUpView one = lastBed(clutch);
        ClutchWords words = tongue.words();
        if (one == null) {
            return words.noBed();
        }
        Double water = one.waterParts();
        Double medium = one.mediumParts();
        return words.bedOf(
                one.medium(),
                water == null || medium == null
                        ? words.ratioUnknown()
                        : words.ratio(tongue.parts(water), tongue.parts(medium)),
                one.box(),
                words.marked(one.topMarked()));
    }

    private static List<ClutchPage.TallyRow> tally(ClutchView clutch, ClutchWords words) {
        return List.of(
                new ClutchPage.TallyRow(words.recovered(), clutch.recovered()),
                new ClutchPage.TallyRow(words.laid(), clutch.laid()),
                new ClutchPage.TallyRow(words.broken(), clutch.broken()),
                new ClutchPage.TallyRow(words.discarded(), clutch.discarded()),
                new ClutchPage.TallyRow(words.setToIncubate(), clutch.setToIncubate()),
                new ClutchPage.TallyRow(words.hatched(), clutch.hatched()),
                new ClutchPage.TallyRow(words.failed(), clutch.failed()),
                new ClutchPage.TallyRow(words.stillIncubating(), clutch.stillIncubating()));
    }
}
