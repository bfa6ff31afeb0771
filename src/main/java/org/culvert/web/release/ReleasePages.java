package org.culvert.web.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.platform.Page;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.release.PhotographService.ReleasePhotographView;
import org.culvert.release.ReleaseService;
import org.culvert.release.ReleaseView;
import org.culvert.release.ReleasedAnimalView;
import org.culvert.release.SightingService;
import org.culvert.release.SightingService.ReleaseSightingView;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.forms.EntryField.Option;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.kept.KeptLinks;
import org.culvert.web.words.FormsWords;
import org.culvert.web.words.ReleaseWords;
import org.jspecify.annotations.Nullable;

/** Lays out what there is to say of releases. */
@ApplicationScoped
class ReleasePages {
    private final ReleaseService releases;
    private final SightingService sightings;
    private final NonReleaseService decisions;
    private final PlanPages plans;
    private final CaseNames names;
    private final HolderNames holders;
    private final Languages languages;
    private final KeptLinks kept;
    private final Sight sight;
    private final Clock clock;

    ReleasePages(
            ReleaseService releases,
            SightingService sightings,
            NonReleaseService decisions,
            PlanPages plans,
            CaseNames names,
            HolderNames holders,
            Languages languages,
            KeptLinks kept,
            Sight sight,
            Clock clock) {
        this.releases = releases;
        this.sightings = sightings;
        this.decisions = decisions;
        this.plans = plans;
        this.names = names;
        this.holders = holders;
        this.languages = languages;
        this.kept = kept;
        this.sight = sight;
        this.clock = clock;
    }

    Page<ReleasePage.Listed> list(int limit, @Nullable UUID before) {
        ReleaseTongue tongue = plans.tongue();
        Page<ReleaseView> found = releases.listReleases(limit, before);
        Set<UUID> cases = found.items().stream()
                .flatMap(release -> release.animals().stream())
                .map(ReleasedAnimalView::caseId)
                .collect(Collectors.toSet());
        Map<UUID, String> animals = names.of(cases);
        Set<UUID> seen = names.seen(cases);
        Map<UUID, String> places = new HashMap<>();
        return new Page<>(
                found.items().stream()
                        .map(release -> new ReleasePage.Listed(
                                release.id(),
                                when(release.at(), tongue),
                                release.animals().stream()
                                        .map(animal -> animal(animal, animals, seen))
                                        .toList(),
                                plans.place(release.siteId(), places, tongue),
                                release.afterRelease().saidPlainly(),
                                feeding(release, tongue)))
                        .toList(),
                found.next());
    }

    private static ReleasePage.Animal animal(ReleasedAnimalView animal, Map<UUID, String> names, Set<UUID> seen) {
        return new ReleasePage.Animal(
                animal.caseId(),
                names.getOrDefault(animal.caseId(), ""),
                seen.contains(animal.caseId()),
                animal.withdrawnAt() == null ? null : String.valueOf(animal.withdrawnBecause()));
    }

    private @Nullable String feeding(ReleaseView release, ReleaseTongue tongue) {
        LocalDate until = release.supportFeedingUntil();
        if (until == null || release.supportFeedingEndedAt() != null) {
            return null;
        }
        return clock.instant().atZone(tongue.zone()).toLocalDate().isAfter(until)
                ? tongue.words().feedingOver(tongue.day(until))
                : tongue.words().feeding(tongue.day(until));
    }

    private static String when(@Nullable Instant at, ReleaseTongue tongue) {
        return at == null ? "" : tongue.moment(at);
    }

    /** The latest decisions, for those who see them all; nothing for others. */
    List<ReleasePage.ListedDecision> decisions(int limit) {
        if (!sight.viewer().hasAny(Role.COORDINATOR, Role.OFFICER)) {
            return List.of();
        }
        ReleaseTongue tongue = plans.tongue();
        ReleaseWords words = tongue.words();
        var found = decisions.listDecisions(null, limit, null).items();
        Map<UUID, String> animals =
                names.of(found.stream().map(one -> one.caseId()).collect(Collectors.toSet()));
        return found.stream()
                .map(one -> new ReleasePage.ListedDecision(
                        one.id(),
                        animals.getOrDefault(one.caseId(), ""),
                        words.standing(one.standing()),
                        one.grounds().stream().map(words::groundOf).collect(Collectors.joining(", ")),
                        one.reviewDueOn() == null ? null : words.reviewDue(tongue.day(one.reviewDueOn()))))
                .toList();
    }

    ReleasePage page(UUID id, PlanForms.Again again) {
        sight.requireSeen("release", id);
        ReleaseTongue tongue = plans.tongue();
        ReleaseView told = releases.getRelease(id);
        Set<UUID> cases =
                told.animals().stream().map(ReleasedAnimalView::caseId).collect(Collectors.toSet());
        Map<UUID, String> animals = names.of(cases);
        Set<UUID> readable = names.seen(cases);
        List<ReleasePage.Animal> listed = told.animals().stream()
                .map(animal -> animal(animal, animals, readable))
                .toList();
        List<ReleasePage.Picture> pictures = pictures(told, tongue);
        List<ReleasePage.Seen> seen = sightings.listSightings(id).stream()
                .map(one -> seen(one, animals, tongue))
                .toList();
        return new ReleasePage(
                told,
                when(told.at(), tongue),
                plans.place(told.siteId(), new HashMap<>(), tongue),
                String.format(
                        Locale.ROOT,
                        "%.5f, %.5f (± %s)",
                        told.decimalLatitude(),
                        told.decimalLongitude(),
                        tongue.distance(told.coordinateUncertaintyInMeters())),
                facts(told, tongue),
                listed,
                lifted(told, tongue.words()),
                pictures,
                seen,
                forms(told, listed, pictures, seen, tongue, again),
                kept.waysOf("releases", id));
    }

    private List<ReleasePage.Fact> facts(ReleaseView told, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        FormsWords usual = languages.words(FormsWords.class);
        List<ReleasePage.Fact> facts = new ArrayList<>();
        add(facts, words.approvedBy(), told.approvedBy());
        add(
                facts,
                words.releasedBy(),
                told.releasedByMemberId() == null ? null : holders.member(told.releasedByMemberId()));
        add(facts, words.weatherSeen(), told.weather());
        add(facts, words.lightSeen(), told.light() == null ? null : words.lightOf(told.light()));
        add(facts, words.manner(), told.manner() == null ? null : words.mannerOf(told.manner()));
        add(facts, words.othersPresent(), told.othersPresent());
        add(
                facts,
                words.raisedTogether(),
                told.raisedTogether() == null
                        ? usual.notKnown()
                        : Boolean.TRUE.equals(told.raisedTogether()) ? usual.yes() : usual.no());
        add(
                facts,
                words.feedingUntil(),
                told.supportFeedingUntil() == null ? null : tongue.day(told.supportFeedingUntil()));
        add(
                facts,
                words.endFeeding(),
                told.supportFeedingEndedAt() == null
                        ? null
                        : words.feedingEnded(
                                tongue.moment(told.supportFeedingEndedAt()),
                                String.valueOf(told.supportFeedingEndedBy())));
        add(facts, words.warnings(), told.warningsRead().isEmpty() ? null : String.join(", ", told.warningsRead()));
        return facts;
    }

    private static void add(List<ReleasePage.Fact> facts, String name, @Nullable String words) {
        if (words != null && !words.isBlank()) {
            facts.add(new ReleasePage.Fact(name, words));
        }
    }

    private List<ReleasePage.Lifted> lifted(ReleaseView told, ReleaseWords words) {
        boolean reads = sight.viewer().hasAny(Role.COORDINATOR, Role.OFFICER);
        return told.lifted().stream()
                .map(one -> new ReleasePage.Lifted(
                        one.key() + ": "
                                + (one.number() == null
                                        ? words.liftedOverride(String.valueOf(one.reason()))
                                        : words.liftedPermit(one.number(), String.valueOf(one.issuedBy()))),
                        reads && one.documentName() != null
                                ? "/api/releases/" + told.id() + "/documents/" + one.id()
                                : null))
                .toList();
    }

    private static List<ReleasePage.Picture> pictures(ReleaseView told, ReleaseTongue tongue) {
        List<ReleasePage.Picture> pictures = new ArrayList<>();
        for (ReleasePhotographView one : told.photographs()) {
            pictures.add(new ReleasePage.Picture(
                    one.id(),
                    pictures.size() + 1,
                    "/api/releases/" + told.id() + "/photographs/" + one.id(),
                    (one.caption() == null ? "" : one.caption() + " ")
                            + (one.takenAt() == null ? "" : tongue.moment(one.takenAt())),
                    one.withdrawnAt() == null ? null : String.valueOf(one.withdrawnBecause())));
        }
        return pictures;
    }

    private static ReleasePage.Seen seen(ReleaseSightingView one, Map<UUID, String> animals, ReleaseTongue tongue) {
        ReleaseWords words = tongue.words();
        List<String> said = new ArrayList<>();
        if (one.caseId() != null) {
            said.add(animals.getOrDefault(one.caseId(), words.someOther()));
        }
        said.add(words.aliveOf(one.alive()));
        said.add(words.knownByOf(one.knownBy()));
        if (one.decimalLatitude() != null) {
            said.add(String.format(
                    Locale.ROOT,
                    "%.5f, %.5f (± %s)",
                    one.decimalLatitude(),
                    one.decimalLongitude(),
                    tongue.distance(
                            one.coordinateUncertaintyInMeters() == null ? 0 : one.coordinateUncertaintyInMeters())));
        }
        if (one.words() != null) {
            said.add(one.words());
        }
        return new ReleasePage.Seen(
                one.id(),
                when(one.at(), tongue),
                String.join("; ", said),
                one.withdrawnAt() == null ? null : String.valueOf(one.withdrawnBecause()));
    }

    private Map<String, EntryForm> forms(
            ReleaseView told,
            List<ReleasePage.Animal> animals,
            List<ReleasePage.Picture> pictures,
            List<ReleasePage.Seen> seen,
            ReleaseTongue tongue,
            PlanForms.Again again) {
        Map<String, EntryForm> forms = new LinkedHashMap<>();
        FormsWords usual = languages.words(FormsWords.class);
        if (sight.viewer().hasAny(Role.COORDINATOR, Role.CLINIC, Role.CARER)) {
            forms.put(
                    "sighting",
                    ReleaseForms.sighting(
                            again.of("sighting"),
                            tongue.words(),
                            usual,
                            animals.stream()
                                    .filter(one -> one.withdrawn() == null)
                                    .map(one -> new Option(one.caseId().toString(), one.name()))
                                    .toList()));
            forms.put(
                    "photograph",
                    ReleaseForms.photograph(again.of("photograph", ReleaseForms::besidePhotograph), tongue.words()));
        }
        if ("soft".equals(told.manner())
                && told.supportFeedingEndedAt() == null
                && sight.viewer().hasAny(Role.COORDINATOR, Role.CARER)) {
            forms.put("feeding", ReleaseForms.feeding(again.of("feeding"), tongue.words(), usual));
        }
        if (sight.viewer().hasAny(Role.COORDINATOR)) {
            forms.put(
                    "withdrawal",
                    ReleaseForms.withdrawal(
                            again.of("withdrawal"),
                            tongue.words(),
                            usual,
                            parts(animals, pictures, seen, tongue.words())));
        }
        return forms;
    }

    private static List<Option> parts(
            List<ReleasePage.Animal> animals,
            List<ReleasePage.Picture> pictures,
            List<ReleasePage.Seen> seen,
            ReleaseWords words) {
        List<Option> parts = new ArrayList<>();
        animals.stream()
                .filter(one -> one.withdrawn() == null)
                .forEach(one -> parts.add(new Option("animal:" + one.caseId(), words.partAnimal(one.name()))));
        pictures.stream()
                .filter(one -> one.withdrawn() == null)
                .forEach(one -> parts.add(new Option("photograph:" + one.id(), words.partPhotograph(one.index()))));
        seen.stream()
                .filter(one -> one.withdrawn() == null)
                .forEach(one -> parts.add(
                        new Option("sighting:" + one.id(), words.partSighting(one.when(), shortened(one.words())))));
        return parts;
    }

    private static String shortened(String words) {
        return words.length() <= 80 ? words : words.substring(0, 78).strip() + " …";
    }
}
