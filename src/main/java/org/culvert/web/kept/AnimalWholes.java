package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.care.clutch.ClutchCorrections;
import org.culvert.care.clutch.ClutchLog;
import org.culvert.care.clutch.ClutchService;
import org.culvert.release.ReleaseEntries;
import org.culvert.release.ReleaseService;
import org.culvert.release.nonrelease.NonReleaseEntries;
import org.culvert.release.nonrelease.NonReleaseService;
import org.culvert.web.acts.WordKeys;

/** Cases, clutches, releases and decisions that an animal stays. */
@ApplicationScoped
class AnimalWholes implements WholeSource {
    private static final String CLUTCH = "/api/clutches/{id}";
    private static final String DECISION = "/api/non-release-decisions/{id}";

    private final CaseService cases;
    private final CaseKinds ofCases;
    private final ClinicKinds ofClinics;
    private final CareKinds ofCare;
    private final ClutchService clutches;
    private final ClutchLog log;
    private final ReleaseService releases;
    private final NonReleaseService decisions;
    private final NamedRecords named;

    AnimalWholes(
            CaseService cases,
            CaseKinds ofCases,
            ClinicKinds ofClinics,
            CareKinds ofCare,
            ClutchService clutches,
            ClutchLog log,
            ReleaseService releases,
            NonReleaseService decisions,
            NamedRecords named) {
        this.cases = cases;
        this.ofCases = ofCases;
        this.ofClinics = ofClinics;
        this.ofCare = ofCare;
        this.clutches = clutches;
        this.log = log;
        this.releases = releases;
        this.decisions = decisions;
        this.named = named;
    }

    @Override
    public List<Whole> wholes() {
        return List.of(
                new Whole(
                                "cases",
                                "case",
                                "/cases/{id}",
                                cases::getCase,
                                Stream.of(ofCases.kinds(), ofClinics.kinds(), ofCare.kinds())
                                        .flatMap(List::stream)
                                        .toList())
                        .naming(Map.of(
                                "visitId", id -> Offered.all(named.visits(id)),
                                "photographId", id -> Offered.all(named.photographs(id)),
                                "attendanceId", id -> Offered.all(named.attendances(id)),
                                "motherId", named::mothers)),
                new Whole("clutches", "clutch", "/clutches/{id}", clutches::getClutch, clutchKinds())
                        .naming(Map.of(
                                "visitId",
                                id -> Offered.all(
                                        named.visits(clutches.getClutch(id).motherCaseId())))),
                new Whole(
                        "releases",
                        "release",
                        "/releases/{id}",
                        releases::getRelease,
                        List.of(KeptKind.of(
                                        "releases", "GET /api/releases/{id}", id -> List.of(releases.getRelease(id)))
                                .corrected(
                                        "/api/releases/{id}",
                                        "release",
                                        ReleaseEntries.ReleaseCorrection.class,
                                        (ids, entry) -> releases.correct(ids.id(), entry)))),
                new Whole(
                        "non-release-decisions",
                        "non-release-decision",
                        "/non-release-decisions/{id}",
                        decisions::getDecision,
                        Stream.concat(
                                        Stream.of(decision()),
                                        Stream.of(
                                                        "second-opinions",
                                                        "authority-notices",
                                                        "permits-to-keep",
                                                        "welfare-reviews",
                                                        "outcomes")
                                                .map(this::part))
                                .toList()));
    }

    private KeptKind ofClutch(String name, String... part) {
        return KeptKind.of(name, "GET " + CLUTCH, id -> List.of(clutches.getClutch(id)), part);
    }

    /** What else is entered of a clutch is taken back on its page. */
    private List<KeptKind> clutchKinds() {
        return List.of(
                ofClutch("clutches")
                        .corrected(
                                CLUTCH,
                                "clutch",
                                ClutchCorrections.ClutchCorrection.class,
                                (ids, entry) -> clutches.correct(ids.whole(), entry)),
                ofClutch("custody-links", "custody")
                        .corrected(
                                CLUTCH + "/custody-links/{linkId}",
                                "clutch",
                                ClutchCorrections.ClutchCustodyCorrection.class,
                                (ids, entry) -> clutches.correctCustody(ids.whole(), ids.id(), entry),
                                "holder.personId"),
                ofClutch("eggs", "recoveries")
                        .corrected(
                                CLUTCH + "/eggs/{recoveryId}",
                                "clutch",
                                ClutchCorrections.EggsCorrection.class,
                                (ids, entry) -> clutches.correctEggs(ids.whole(), ids.id(), entry)),
                ofClutch("failed-eggs", "failures")
                        .corrected(
                                CLUTCH + "/failed-eggs/{failureId}",
                                "clutch",
                                ClutchCorrections.FailedEggsCorrection.class,
                                (ids, entry) -> log.correctFailed(ids.whole(), ids.id(), entry)),
                ofClutch("hatchings", "hatchings")
                        .corrected(
                                CLUTCH + "/hatchings/{hatchingId}",
                                "clutch",
                                ClutchCorrections.HatchedCorrection.class,
                                (ids, entry) -> clutches.correctHatching(ids.whole(), ids.id(), entry)));
    }

    private KeptKind decision() {
        return KeptKind.of("non-release-decisions", "GET " + DECISION, id -> List.of(decisions.getDecision(id)))
                .corrected(
                        DECISION,
                        "non-release-decision",
                        NonReleaseEntries.NonReleaseCorrection.class,
                        (ids, entry) -> decisions.correct(ids.whole(), entry))
                .withdrawn(
                        DECISION + "/withdrawal",
                        "non-release-decision",
                        (ids, why) -> decisions.withdraw(ids.whole(), why.reason()));
    }

    private KeptKind part(String name) {
        return KeptKind.of(name, "GET " + DECISION, id -> List.of(decisions.getDecision(id)), WordKeys.of(name))
                .withdrawn(
                        DECISION + "/parts/{partId}/withdrawal",
                        "non-release-decision",
                        (ids, why) -> decisions.withdrawPart(ids.whole(), ids.id(), why.reason()));
    }
}
