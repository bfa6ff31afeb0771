package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.animal.intake.IntakeService;
import org.culvert.animal.intake.SurgeEntries;
import org.culvert.animal.intake.SurgeRegister;
import org.culvert.call.CallEntry;
import org.culvert.care.placement.SurgeService;
import org.culvert.platform.FormBodies;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Page;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;
import org.jspecify.annotations.Nullable;

/** Many casualties at once: a tent where they are taken in, and how their places are shared out. */
@ApplicationScoped
class SurgeSheets implements SheetSource {
    /** @param leaveOutCases numbers of cases, as the proposal shows them */
    record Approval(
            @NotNull List<String> leaveOutCases,
            @Nullable @Size(max = 4000) String conditions) {}

    /** Many animals at once, a line each; where one was found, and by whom, is told of it alone. */
    record ManyTakenIn(
            @Nullable Instant at,
            @Nullable UUID holderMemberId,
            @NotNull @Valid List<AnimalLine> animals) {
        SurgeEntries.IntakeEntry asked() {
            return new SurgeEntries.IntakeEntry(
                    at, holderMemberId, animals.stream().map(AnimalLine::asked).toList());
        }
    }

    /** An animal as a line has it, most important first. */
    record AnimalLine(
            @NotNull String sector,
            SurgeEntries.@NotNull IntakeVitality vitality,
            @Nullable String temporaryNumber,
            @Nullable String verbatimIdentification,
            SurgeEntries.@Nullable Triage triage,
            @Nullable String condition,
            @Nullable String taxon,
            CallEntry.@Nullable Sex sex,
            @Nullable String lifeStage,
            boolean dependentYoung,
            @Nullable String motherTemporaryNumber,
            @Nullable String cause) {
        SurgeEntries.IntakeAnimal asked() {
            return new SurgeEntries.IntakeAnimal(
                    sector,
                    temporaryNumber,
                    taxon,
                    verbatimIdentification,
                    vitality,
                    sex == null ? CallEntry.Sex.unknown : sex,
                    lifeStage,
                    dependentYoung,
                    null,
                    null,
                    null,
                    condition,
                    triage,
                    cause,
                    motherTemporaryNumber,
                    null);
        }
    }

    private static final int MOST = 50;

    private final SurgeRegister surges;
    private final IntakeService intakes;
    private final SurgeService proposals;
    private final FormBodies bodies;

    SurgeSheets(SurgeRegister surges, IntakeService intakes, SurgeService proposals, FormBodies bodies) {
        this.surges = surges;
        this.intakes = intakes;
        this.proposals = proposals;
        this.bodies = bodies;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(surges(), proposals());
    }

    private Sheet surges() {
        return Sheet.of("surges", Purpose.care, () -> surges.listSurges(null))
                .titled("name", "kind")
                .one(surges::getSurge)
                .act(
                        new Act<>(
                                "intakes",
                                "POST /api/surges/{id}/intakes",
                                null,
                                true,
                                SurgeEntries.IntakeAnimal.class,
                                Set.of("finder")),
                        (id, animal) -> intakes.takeIn(id, new SurgeEntries.IntakeEntry(null, null, List.of(animal))))
                .act(
                        new Act<>(
                                "many-intakes",
                                "POST /api/surges/{id}/intakes",
                                null,
                                true,
                                ManyTakenIn.class,
                                Set.of()),
                        (id, many) -> intakes.takeIn(id, bodies.checked(many.asked())))
                .act(
                        new Act<>(
                                "sectors",
                                "POST /api/surges/{id}/sectors",
                                null,
                                true,
                                SurgeEntries.SectorEntry.class,
                                Set.of("area")),
                        surges::addSector)
                .entered(
                        SurgeEntries.SurgeEntry.class,
                        entry -> surges.declare(entry).id())
                .corrected("surge", SurgeEntries.SurgeCorrection.class, surges::correct)
                .changed("ending", "surge", SurgeEntries.SurgeEnding.class, surges::end);
    }

    private Sheet proposals() {
        return Sheet.paged(
                        "placement-proposals",
                        Purpose.care,
                        most -> Page.of(
                                proposals.listProposals(MOST + 1),
                                MOST,
                                one -> one,
                                one -> one.id().toString()))
                .readBy("GET /api/placement-proposals/{id}")
                .titled("words", "proposedAt")
                .one(proposals::getProposal)
                .entered(
                        SurgeService.ProposalEntry.class,
                        entry -> proposals.propose(entry).id(),
                        "caseIds")
                .changed(
                        "approval",
                        "placement-proposal",
                        Approval.class,
                        (id, approval) -> proposals.approve(
                                id,
                                new SurgeService.ProposalApproval(
                                        leftOut(id, approval.leaveOutCases()), approval.conditions())));
    }

    private List<UUID> leftOut(UUID proposal, List<String> numbers) {
        var moves = proposals.getProposal(proposal).moves();
        return numbers.stream()
                .map(number -> moves.stream()
                        .filter(move -> Long.toString(move.number()).equals(number))
                        .map(SurgeService.ProposedMove::caseId)
                        .findFirst()
                        .orElseThrow(() -> InvalidException.of(
                                "leaveOutCases",
                                "Case " + number + " is not in this proposal.",
                                "numbers of cases of its moves")))
                .toList();
    }
}
