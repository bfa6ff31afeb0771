package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseCorrections;
import org.culvert.animal.CaseCorrector;
import org.culvert.animal.CaseService;
import org.culvert.animal.CustodyService;
import org.culvert.animal.photograph.PhotographService;
import org.culvert.care.clock.ClockEntries;
import org.culvert.care.clock.ClockService;
import org.culvert.care.clock.ExtensionService;
import org.culvert.care.clock.NoticeService;
import org.culvert.care.health.ExposureEntries;
import org.culvert.care.health.ExposureService;
import org.culvert.care.health.SyndromeEntries;
import org.culvert.care.health.SyndromeService;
import org.culvert.care.placement.KinService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.sight.Sight;
import org.culvert.release.AssessmentService;
import org.jspecify.annotations.Nullable;

/** Of a case: the animal, who answered for it, where it was, how it ended; and what is told of it to others. */
@ApplicationScoped
class CaseKinds {
    /** A tie to another case, which people know by its number. */
    record Tie(
            @NotNull KinService.KeepingKind keep,
            @Nullable @Positive Long otherCase,
            @NotBlank @Size(max = 2000) String words) {}

    private static final String CASE = "/api/cases/{id}";
    private static final String READS = "GET /api/cases/{id}";
    private static final String READS_KIN = "GET /api/cases/{id}/kin";

    private final CaseService cases;
    private final CaseCorrector corrector;
    private final CustodyService custody;
    private final PhotographService photographs;
    private final ClockService clocks;
    private final ExtensionService extensions;
    private final NoticeService notices;
    private final SyndromeService syndromes;
    private final ExposureService exposures;
    private final KinService kin;
    private final AssessmentService assessments;
    private final Sight sight;

    CaseKinds(
            CaseService cases,
            CaseCorrector corrector,
            CustodyService custody,
            PhotographService photographs,
            ClockService clocks,
            ExtensionService extensions,
            NoticeService notices,
            SyndromeService syndromes,
            ExposureService exposures,
            KinService kin,
            AssessmentService assessments,
            Sight sight) {
        this.cases = cases;
        this.corrector = corrector;
        this.custody = custody;
        this.photographs = photographs;
        this.clocks = clocks;
        this.extensions = extensions;
        this.notices = notices;
        this.syndromes = syndromes;
        this.exposures = exposures;
        this.kin = kin;
        this.assessments = assessments;
        this.sight = sight;
    }

    List<KeptKind> kinds() {
        return List.of(
                itself(),
                animal(),
                custody(),
                KeptKind.of("whereabouts", READS, cases::listWhereabouts)
                        .corrected(
                                "/api/whereabouts/{id}",
                                "whereabouts",
                                CaseCorrections.WhereaboutsCorrection.class,
                                (ids, entry) -> corrector.correctWhereabouts(ids.id(), entry)),
                KeptKind.of("fates", READS, this::only, "fate")
                        .corrected(
                                CASE + "/fate",
                                "case",
                                CaseCorrections.FateCorrection.class,
                                (ids, entry) -> corrector.correctFate(ids.whole(), entry))
                        .withdrawn(
                                CASE + "/fate/withdrawal",
                                "case",
                                (ids, why) -> corrector.withdrawFate(ids.whole(), why.reason())),
                KeptKind.of("bodies", READS, this::only, "body")
                        .corrected(
                                CASE + "/body",
                                "case",
                                CaseCorrections.BodyCorrection.class,
                                (ids, entry) -> corrector.correctBody(ids.whole(), entry),
                                "holder.personId"),
                clockNotices(),
                clockExtensions(),
                syndromes(),
                KeptKind.of("keeping-ties", READS_KIN, id -> kin.getKin(id).ties())
                        .withdrawn(
                                "/api/keeping-ties/{id}/withdrawal",
                                "keeping-tie",
                                (ids, why) -> kin.withdraw(ids.id(), why.reason())),
                KeptKind.paged("photographs", "GET /api/cases/{id}/photographs", photographs::listOfCase)
                        .withdrawn(
                                "/api/photographs/{id}/withdrawal",
                                "photograph",
                                (ids, why) -> photographs.withdraw(ids.id(), why.reason())));
    }

    private List<?> only(UUID id) {
        return List.of(cases.getCase(id));
    }

    private KeptKind itself() {
        return KeptKind.of("cases", READS, this::only)
                .corrected(
                        CASE,
                        "case",
                        CaseCorrections.CaseCorrection.class,
                        (ids, entry) -> corrector.correctCase(ids.id(), entry))
                .act(
                        "notices",
                        "POST " + CASE + "/notices",
                        "",
                        ClockEntries.ClockNoticeEntry.class,
                        (ids, entry) -> notices.record(ids.id(), entry))
                .act(
                        "clock-extensions",
                        "POST " + CASE + "/clock-extensions",
                        "",
                        ClockEntries.ClockExtensionEntry.class,
                        (ids, entry) -> extensions.extend(ids.id(), entry))
                .act(
                        "syndrome-reports",
                        "POST " + CASE + "/syndrome-reports",
                        "",
                        SyndromeEntries.ReportEntry.class,
                        (ids, entry) -> syndromes.report(ids.id(), entry))
                .act(
                        "exposures",
                        "POST /api/exposures",
                        "",
                        ExposureEntries.ExposureEntry.class,
                        (ids, entry) -> exposures.enter(of(ids.id(), null, entry)),
                        "caseId",
                        "incidentId")
                .act(
                        "found-place-unsuitable",
                        "POST " + CASE + "/found-place-unsuitable",
                        "",
                        AssessmentService.UnsuitableEntry.class,
                        (ids, entry) -> assessments.recordUnsuitable(ids.id(), entry))
                .act(
                        "keeping-ties",
                        "POST " + CASE + "/keeping-ties",
                        "",
                        Tie.class,
                        (ids, tie) -> kin.enter(
                                ids.id(),
                                new KinService.KeepingTieEntry(tie.keep(), other(tie.otherCase()), tie.words())))
                .act(
                        "custody-links",
                        "POST " + CASE + "/custody-links",
                        "",
                        CaseCorrections.CustodyEntry.class,
                        (ids, entry) -> custody.insert(ids.id(), entry),
                        "holder.personId");
    }

    /** An exposure to the animal of a case or an incident. */
    static ExposureEntries.ExposureEntry of(
            @Nullable UUID caseId, @Nullable UUID incidentId, ExposureEntries.ExposureEntry entry) {
        return new ExposureEntries.ExposureEntry(
                entry.kind(),
                entry.exposed(),
                caseId,
                incidentId,
                entry.bodyPart(),
                entry.washed(),
                entry.washedMinutes(),
                entry.protectiveKit(),
                entry.needleUsedOnAnimal(),
                entry.words(),
                entry.happenedAt(),
                entry.told());
    }

    private @Nullable UUID other(@Nullable Long number) {
        if (number == null) {
            return null;
        }
        UUID id = cases.findByNumber(number)
                .orElseThrow(() ->
                        InvalidException.of("otherCase", "There is no case of that number.", "the number of a case"));
        sight.requireSeen("case", id);
        return id;
    }

    private KeptKind animal() {
        return KeptKind.of(
                        "animals",
                        "GET /api/animals/{id}",
                        id -> List.of(cases.getCase(id).animal()))
                .corrected(
                        "/api/animals/{id}",
                        "animal",
                        CaseCorrections.AnimalCorrection.class,
                        (ids, entry) -> corrector.correctAnimal(ids.id(), entry));
    }

    private KeptKind custody() {
        return KeptKind.of("custody-links", READS, this::only, "custody")
                .corrected(
                        CASE + "/custody-links/{linkId}",
                        "case",
                        CaseCorrections.CustodyCorrection.class,
                        (ids, entry) -> custody.correct(ids.whole(), ids.id(), entry),
                        "holder.personId");
    }

    private KeptKind clockNotices() {
        return KeptKind.of(
                        "clock-notices",
                        "GET /api/cases/{id}/clocks",
                        id -> clocks.ofCase(id).notices())
                .withdrawn(
                        "/api/clock-notices/{id}/withdrawal",
                        "clock-notice",
                        (ids, why) -> notices.withdraw(ids.id(), why.reason()));
    }

    private KeptKind clockExtensions() {
        return KeptKind.of(
                        "clock-extensions",
                        "GET /api/cases/{id}/clocks",
                        id -> clocks.ofCase(id).extensions())
                .corrected(
                        "/api/clock-extensions/{id}",
                        "clock-extension",
                        ClockEntries.ClockExtensionCorrection.class,
                        (ids, entry) -> extensions.correct(ids.id(), entry))
                .withdrawn(
                        "/api/clock-extensions/{id}/withdrawal",
                        "clock-extension",
                        (ids, why) -> extensions.withdraw(ids.id(), why.reason()));
    }

    private KeptKind syndromes() {
        return KeptKind.of("syndrome-reports", "GET /api/cases/{id}/syndrome-reports", syndromes::listReports)
                .corrected(
                        "/api/syndrome-reports/{id}",
                        "syndrome-report",
                        SyndromeEntries.ReportCorrection.class,
                        (ids, entry) -> syndromes.correct(ids.id(), entry))
                .withdrawn(
                        "/api/syndrome-reports/{id}/withdrawal",
                        "syndrome-report",
                        (ids, why) -> syndromes.withdraw(ids.id(), new SyndromeEntries.ReportWithdrawal(why.reason())));
    }
}
