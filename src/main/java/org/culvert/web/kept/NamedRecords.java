package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.animal.CaseView;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.animal.photograph.PhotographView;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.VisitView;
import org.culvert.dispatch.DispatchService;
import org.culvert.dispatch.DispatchService.AttendanceView;
import org.culvert.platform.Page;
import org.culvert.platform.sight.Sight;
import org.culvert.web.HolderNames;
import org.culvert.web.Languages;
import org.culvert.web.RegionTimes;
import org.culvert.web.acts.ActRights;
import org.culvert.web.forms.Labels;
import org.culvert.web.words.KeptWords;
import org.jspecify.annotations.Nullable;

/** Records of a case that fields of others refer to, each in words by its identifier, as far as whoever asks sees them. */
@ApplicationScoped
public class NamedRecords {
    private static final int MOST_MOTHERS = 200;

    /** On pages of a day, where it is of what was photographed just now. */
    private static final int MOST_OF_EACH = 12;

    private final ClinicService clinic;
    private final PhotographService photographs;
    private final DispatchService dispatch;
    private final CaseService cases;
    private final HolderNames holders;
    private final RegionTimes times;
    private final Languages languages;
    private final Labels labels;
    private final ActRights rights;
    private final Sight sight;

    NamedRecords(
            ClinicService clinic,
            PhotographService photographs,
            DispatchService dispatch,
            CaseService cases,
            HolderNames holders,
            RegionTimes times,
            Languages languages,
            Labels labels,
            ActRights rights,
            Sight sight) {
        this.clinic = clinic;
        this.photographs = photographs;
        this.dispatch = dispatch;
        this.cases = cases;
        this.holders = holders;
        this.times = times;
        this.languages = languages;
        this.labels = labels;
        this.rights = rights;
        this.sight = sight;
    }

    /** Visits: when, and where. */
    public Map<String, String> visits(UUID caseId) {
        return rights.may("GET /api/visits/{id}")
                ? named("/api/visits", clinic.listVisits(caseId), VisitView::id, this::said)
                : Map.of();
    }

    private String said(VisitView visit) {
        return at(visit.arrivedAt()) + ", " + holders.organisation(visit.clinicId());
    }

    /** Photographs of the animal itself that were not taken back: when, and what they show. */
    Map<String, String> photographs(UUID caseId) {
        if (!rights.may("GET /api/cases/{id}/photographs")) {
            return Map.of();
        }
        List<PhotographView> all = new ArrayList<>();
        UUID before = null;
        do {
            Page<PhotographView> some = photographs.listOfCase(caseId, KeptKind.MOST, before);
            some.items().stream()
                    .filter(one -> caseId.equals(one.caseId()) && one.withdrawnAt() == null)
                    .forEach(all::add);
            before = some.next() == null ? null : UUID.fromString(some.next());
        } while (before != null);
        return named("/api/photographs", all, PhotographView::id, this::said);
    }

    /** The newest of each animal itself that were not taken back, by case. */
    public Map<UUID, Map<String, String>> newestPhotographs(Set<UUID> caseIds) {
        if (!rights.may("GET /api/cases/{id}/photographs")) {
            return Map.of();
        }
        List<PhotographView> all = photographs.listNewestOf(caseIds, MOST_OF_EACH);
        Map<String, String> named = named("/api/photographs", all, PhotographView::id, this::said);
        Map<UUID, Map<String, String>> byCase = new HashMap<>();
        for (PhotographView one : all) {
            String words = named.get(one.id().toString());
            if (words != null && one.caseId() != null) {
                byCase.computeIfAbsent(one.caseId(), id -> new LinkedHashMap<>())
                        .put(one.id().toString(), words);
            }
        }
        return byCase;
    }

    private String said(PhotographView photograph) {
        Instant at = Objects.requireNonNullElse(
                photograph.takenAt(), photograph.record().recordedAt());
        return photograph.caption() == null ? at(at) : at(at) + ", " + photograph.caption();
    }

    /** Goings-out to where it was found: when, who led, and what came of it. */
    Map<String, String> attendances(UUID caseId) {
        return rights.may("GET /api/incidents/{id}/attendances")
                ? named(
                        "/api/attendances",
                        dispatch.listAttendances(cases.getCase(caseId).incidentId()),
                        AttendanceView::id,
                        this::said)
                : Map.of();
    }

    private String said(AttendanceView attendance) {
        return Stream.of(
                        at(attendance.offeredAt()),
                        holders.member(attendance.leadMemberId()),
                        attendance.outcome() == null ? "" : labels.choice(attendance.outcome()))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** Animals that may be its mother, by their own identifiers: she herself where she is known, then those of the same incident. */
    Offered mothers(UUID caseId) {
        List<CaseView> found = cases.listPossibleMothers(caseId, MOST_MOTHERS + 1);
        boolean more = found.size() > MOST_MOTHERS;
        return new Offered(
                named(
                        "/api/cases",
                        more ? found.subList(0, MOST_MOTHERS) : found,
                        CaseView::id,
                        one -> one.animal().id(),
                        this::said),
                more ? MOST_MOTHERS : 0);
    }

    private String said(CaseView mother) {
        return languages
                .words(KeptWords.class)
                .animalOfCase(
                        mother.number(),
                        mother.animal().vernacularName(),
                        labels.choice(mother.animal().sex()),
                        at(mother.foundAt()));
    }

    private String at(@Nullable Instant instant) {
        return instant == null ? "" : times.moment(instant, languages.ofPage().toLanguageTag());
    }

    private <T> Map<String, String> named(String base, List<T> all, Function<T, UUID> id, Function<T, String> words) {
        return named(base, all, id, id, words);
    }

    private <T> Map<String, String> named(
            String base, List<T> all, Function<T, UUID> seenBy, Function<T, UUID> id, Function<T, String> words) {
        Set<UUID> seen =
                Set.copyOf(sight.onlySeenAt(base, all.stream().map(seenBy).toList()));
        Map<String, String> named = new LinkedHashMap<>();
        all.stream()
                .filter(one -> seen.contains(seenBy.apply(one)))
                .forEach(one -> named.putIfAbsent(id.apply(one).toString(), words.apply(one)));
        return named;
    }
}
