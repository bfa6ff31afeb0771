package org.culvert.animal.intake;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.culvert.animal.CaseEntries;
import org.culvert.animal.CaseService;
import org.culvert.call.CallEntry;
import org.culvert.call.CallEntry.Verification;
import org.culvert.call.CallEntry.Vitality;
import org.culvert.call.CallService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.roster.Holder;
import org.culvert.roster.RosterService;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/** Takes many animals in at the tent of a surge: all of a form, or none. */
@ApplicationScoped
public class IntakeService {
    @ApplicationScoped
    static class Intakes implements PanacheRepositoryBase<SurgeIntake, UUID> {}

    private final SurgeRegister surges;
    private final Intakes intakes;
    private final IntakeChecks checks;
    private final IntakeReader reader;
    private final CallService calls;
    private final CaseService cases;
    private final RosterService roster;
    private final TaxonService taxa;
    private final EntityManager entities;
    private final Clock clock;

    IntakeService(
            SurgeRegister surges,
            Intakes intakes,
            IntakeChecks checks,
            IntakeReader reader,
            CallService calls,
            CaseService cases,
            RosterService roster,
            TaxonService taxa,
            EntityManager entities,
            Clock clock) {
        this.surges = surges;
        this.intakes = intakes;
        this.checks = checks;
        this.reader = reader;
        this.calls = calls;
        this.cases = cases;
        this.roster = roster;
        this.taxa = taxa;
        this.entities = entities;
        this.clock = clock;
    }

    /** What was taken in before: who has which number, and how far the counts of the sectors are. */
    private record Before(TemporaryNumbers numbers, Map<String, UUID> animalByNumber) {}

    /**
     * Takes the animals of a form in. Each becomes an incident, an animal and a case as if somebody had rung about it, held by
     * the tent's person; its temporary number leads to its case for ever. Two forms of one surge wait for each other.
     *
     * @throws InvalidException naming each field of each animal that is wrong, such as {@code animals[12].taxon}
     */
    @Transactional
    public IntakeReceipt takeIn(UUID surgeId, SurgeEntries.IntakeEntry entry) {
        Surge surge = surges.lock(surgeId);
        Instant at = Corrections.passed("at", entry.at(), clock);
        if (at.isBefore(surge.from()) || surge.endedAt != null && at.isAfter(surge.endedAt)) {
            throw InvalidException.of(
                    "at",
                    "The surge lasted from " + surge.from()
                            + (surge.endedAt == null ? " on." : " to " + surge.endedAt + "."),
                    "an instant within it");
        }
        UUID holder = entry.holderMemberId() == null ? surge.holderId : entry.holderMemberId();
        roster.getMember(holder);
        Map<String, SurgeSector> sectors = surges.sectorsOf(surgeId).stream()
                .collect(Collectors.toMap(sector -> sector.code, Function.identity()));
        Before before = before(surgeId);
        checks.require(entry.animals(), at, sectors.keySet(), before.numbers, before.animalByNumber.keySet());
        String unknown = entry.animals().stream().anyMatch(animal -> animal.taxon() == null)
                ? taxa.requireNotKnownYet().scientificName()
                : "";
        List<SurgeIntake> rows = new ArrayList<>();
        for (int i = 0; i < entry.animals().size(); i++) {
            SurgeEntries.IntakeAnimal animal = entry.animals().get(i);
            CaseService.TakenIn taken = open(surge, animal, unknown, holder, at, before.animalByNumber, i);
            String told = animal.temporaryNumber();
            TemporaryNumbers.Given number = told == null
                    ? before.numbers.next(animal.sector(), "")
                    : new TemporaryNumbers.Given(told.strip(), null);
            before.animalByNumber.put(TemporaryNumbers.key(number.number()), taken.animalId());
            SurgeSector sector = java.util.Objects.requireNonNull(sectors.get(animal.sector()));
            var row = new SurgeIntake(sector, taken.caseId(), number, holder, animal, at);
            intakes.persist(row);
            rows.add(row);
        }
        intakes.flush();
        return new IntakeReceipt(reader.views(rows));
    }

    private CaseService.TakenIn open(
            Surge surge,
            SurgeEntries.IntakeAnimal animal,
            String unknown,
            UUID holder,
            Instant at,
            Map<String, UUID> animalByNumber,
            int row) {
        boolean dead = animal.vitality() == SurgeEntries.IntakeVitality.dead;
        Verification verification = animal.taxon() == null ? Verification.unverified : Verification.seenByMember;
        var told = new CallEntry.Animal(
                animal.taxon(),
                null,
                animal.verbatimIdentification(),
                verification,
                1,
                dead ? Vitality.dead : Vitality.alive,
                animal.lifeStage(),
                animal.sex(),
                animal.condition(),
                CallEntry.Answer.unknown,
                false);
        var call = new CallEntry(
                at,
                null,
                null,
                new CallEntry.People(CallEntry.Answer.unknown, CallEntry.Answer.unknown, null),
                animal.finder(),
                null,
                animal.cause() == null ? causeOf(surge) : animal.cause(),
                List.of(told),
                animal.place(),
                null);
        String mother = animal.motherTemporaryNumber();
        try {
            CallService.Kept kept = calls.keep(call, null);
            return cases.takeIn(
                    new CaseEntries.CaseEntry(
                            null,
                            new CaseEntries.AnimalEntry(
                                    animal.taxon() == null ? unknown : animal.taxon(),
                                    verification,
                                    animal.sex(),
                                    animal.lifeStage(),
                                    mother == null ? null : animalByNumber.get(TemporaryNumbers.key(mother)),
                                    null),
                            kept.incidentId(),
                            null,
                            null,
                            false,
                            animal.dependentYoung(),
                            Holder.member(holder)),
                    animal.foundAt() == null ? at : animal.foundAt(),
                    at,
                    dead,
                    surge.tentWords);
        } catch (InvalidException wrong) {
            throw new InvalidException(IntakeChecks.within(row, wrong));
        }
    }

    /** Kinds of surge are causes but for the last, which may be anything. */
    private static String causeOf(Surge surge) {
        return surge.kind.equals(SurgeEntries.SurgeKind.other.name()) ? "unknown" : surge.kind;
    }

    private Before before(UUID surgeId) {
        List<?> found =
                entities.createNativeQuery("""
                        select i.temporary_number, i.running, s.code, c.number, c.animal_id
                        from surge_intakes i join surge_sectors s on s.id = i.sector_id join cases c on c.id = i.case_id
                        where i.surge_id = :surge
                        """).setParameter("surge", surgeId).getResultList();
        Map<String, String> takenBy = new HashMap<>();
        Map<String, Integer> last = new HashMap<>();
        Map<String, UUID> animals = new HashMap<>();
        for (Object one : found) {
            Object[] row = (Object[]) one;
            String key = TemporaryNumbers.key((String) row[0]);
            takenBy.put(key, "case " + row[3] + " of sector " + row[2]);
            animals.put(key, (UUID) row[4]);
            @Nullable Integer running = (Integer) row[1];
            if (running != null) {
                last.merge((String) row[2], running, Math::max);
            }
        }
        return new Before(new TemporaryNumbers(takenBy, last), animals);
    }
}
