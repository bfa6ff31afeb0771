package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.animal.CaseService;
import org.culvert.care.incubation.EggCount;
import org.culvert.care.incubation.HatchWindow;
import org.culvert.care.incubation.SexAdvisory;
import org.culvert.care.incubation.TemperatureSeries;
import org.culvert.clinic.ClinicService;
import org.culvert.clinic.VisitView;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/** Shows clutches; their sums, the window and what a film says are derived here and kept nowhere. */
@ApplicationScoped
class ClutchReader {
    /** What stands beside every clutch. */
    static final List<String> CAUTIONS = List.of(
            "Never turn an egg: keep the marked side up, also when you lift it to candle it.",
            "Turtles and their eggs can carry salmonella. Wash your hands after each look, and keep children, the old and the ill"
                    + " away from them.",
            HatchWindow.NEVER_FAILED,
            "Eggs are protected wildlife in many places. Check your local code; ask your licensed vet.");

    private final ClutchRepositories.Clutches clutches;
    private final ClutchRepositories.EggRecoveries recoveries;
    private final ClutchRepositories.ClutchCustodyLinks links;
    private final ClutchRepositories.Hatchings hatchings;
    private final ClutchRepositories.Failures failures;
    private final ClutchRepositories.InsideReadings insides;
    private final ClutchRepositories.SetUps setUps;
    private final ClutchRepositories.Candlings candlings;
    private final ClutchRepositories.TemperatureRecords temperatures;
    private final TemperatureStore store;
    private final IncubationFactService facts;
    private final CaseService cases;
    private final ClinicService clinic;
    private final RegionService region;
    private final RecordViews records;
    private final Clock clock;

    ClutchReader(
            ClutchRepositories.Clutches clutches,
            ClutchRepositories.EggRecoveries recoveries,
            ClutchRepositories.ClutchCustodyLinks links,
            ClutchRepositories.Hatchings hatchings,
            ClutchRepositories.Failures failures,
            ClutchRepositories.InsideReadings insides,
            ClutchRepositories.SetUps setUps,
            ClutchRepositories.Candlings candlings,
            ClutchRepositories.TemperatureRecords temperatures,
            TemperatureStore store,
            IncubationFactService facts,
            CaseService cases,
            ClinicService clinic,
            RegionService region,
            RecordViews records,
            Clock clock) {
        this.clutches = clutches;
        this.recoveries = recoveries;
        this.links = links;
        this.hatchings = hatchings;
        this.failures = failures;
        this.insides = insides;
        this.setUps = setUps;
        this.candlings = candlings;
        this.temperatures = temperatures;
        this.store = store;
        this.facts = facts;
        this.cases = cases;
        this.clinic = clinic;
        this.region = region;
        this.records = records;
        this.clock = clock;
    }

    ClutchViews.ClutchView view(Clutch clutch) {
        UUID id = clutch.id();
        List<EggRecovery> eggs = recoveries.list("clutchId = ?1 order by happenedAt, id", id);
        List<EggRecovery> standing = eggs.stream().filter(ClutchPart::stands).toList();
        List<Hatching> hatched = hatchings.list("clutchId = ?1 order by happenedAt, id", id);
        List<FailedEggs> failed = failures.list("clutchId = ?1 order by happenedAt, id", id);
        List<EggsLeftInside> inside = insides.list("clutchId = ?1 order by happenedAt, id", id);
        List<SetUp> beds = setUps.list("clutchId = ?1 order by happenedAt, id", id);
        List<Candling> candled = candlings.list("clutchId = ?1 order by happenedAt, id", id);
        List<TemperatureRecord> warm = temperatures.list("clutchId = ?1 order by happenedAt, id", id);
        List<ClutchCustody> chain = links.list("clutchId = ?1 order by heldFrom", id);
        records.lookUp(Stream.of(eggs, hatched, failed, inside, beds, candled, warm, chain, List.of(clutch))
                .flatMap(List::stream)
                .toList());
        int set = standing.stream().mapToInt(row -> row.setToIncubate).sum();
        long out = hatched.stream().mapToLong(row -> row.hatched).sum();
        int givenUp = failed.stream()
                .filter(ClutchPart::stands)
                .mapToInt(row -> row.failed)
                .sum();
        String scientificName = cases.getCase(clutch.motherCaseId).animal().scientificName();
        IncubationFactService.Known known = facts.about(
                scientificName, clock.instant().atZone(region.zone()).toLocalDate());
        ClutchViews.EggReconciliationView reconciliation = reconcile(clutch.motherCaseId);
        ClutchViews.FilmCountView taken = reconciliation.films().stream()
                .filter(ClutchViews.FilmCountView::taken)
                .findFirst()
                .orElse(null);
        return new ClutchViews.ClutchView(
                id,
                clutch.motherCaseId,
                clutch.visitId,
                standing.stream().mapToInt(row -> row.recovered).sum(),
                standing.stream()
                        .filter(row -> row.howTheyCame().laid())
                        .mapToInt(row -> row.recovered)
                        .sum(),
                set,
                standing.stream().mapToInt(row -> row.broken).sum(),
                standing.stream().mapToInt(row -> row.discarded).sum(),
                out,
                givenUp,
                set - out - givenUp,
                taken == null ? null : taken.counted(),
                taken == null ? null : taken.differsBy() != 0,
                reconciliation,
                chain.stream()
                        .map(link -> new ClutchViews.ClutchCustodyView(
                                link.id(),
                                new Holder(link.memberId, link.organisationId, null),
                                link.heldFrom,
                                link.heldTo,
                                link.authorisation,
                                records.of(link)))
                        .toList(),
                eggs.stream().map(this::view).toList(),
                hatched.stream()
                        .map(row ->
                                new ClutchViews.HatchedView(row.id(), row.hatched, row.happenedAt(), records.of(row)))
                        .toList(),
                failed.stream().map(this::view).toList(),
                inside.stream().map(this::view).toList(),
                beds.stream().map(this::view).toList(),
                candled.stream().map(this::view).toList(),
                warm.stream().map(this::view).toList(),
                window(id, scientificName, known, standing),
                advise(scientificName, known),
                CAUTIONS,
                records.of(clutch));
    }

    private ClutchViews.HatchWindowView window(
            UUID id, String scientificName, IncubationFactService.Known known, List<EggRecovery> standing) {
        List<Instant> set = standing.stream()
                .filter(row -> row.setToIncubate > 0)
                .map(ClutchPart::at)
                .sorted()
                .toList();
        HatchWindow window = HatchWindow.of(
                scientificName,
                known.periods(),
                known.model(),
                TemperatureSeries.of(store.readings(id)),
                set.isEmpty() ? null : set.get(0),
                set.isEmpty() ? null : set.get(set.size() - 1),
                clock.instant(),
                region.zone());
        return new ClutchViews.HatchWindowView(
                window.earliest(), window.latest(), window.narrowed(), window.words(), window.sources());
    }

    private static ClutchViews.SexAdvisoryView advise(String scientificName, IncubationFactService.Known known) {
        SexAdvisory advisory = SexAdvisory.of(scientificName, known.sex());
        return new ClutchViews.SexAdvisoryView(
                advisory.madeBy(), advisory.advice(), advisory.why(), advisory.sources());
    }

    /** Of all clutches of a mother in one case, so that eggs in two boxes count once each. */
    private ClutchViews.EggReconciliationView reconcile(UUID motherCaseId) {
        List<UUID> ids = clutches.list("motherCaseId", motherCaseId).stream()
                .map(Clutch::id)
                .toList();
        List<EggCount.Out> outs = recoveries.list("clutchId in ?1 and withdrawnAt is null", ids).stream()
                .map(row -> new EggCount.Out(
                        row.at(), row.recovered, row.howTheyCame().laid()))
                .toList();
        List<EggCount.Inside> inside = insides.list("clutchId in ?1 and withdrawnAt is null", ids).stream()
                .map(row -> new EggCount.Inside(row.at(), row.counted))
                .toList();
        Map<String, ClutchViews.FilmCountView> told = new HashMap<>();
        List<EggCount.Film> films = new ArrayList<>();
        for (VisitView visit : clinic.listVisits(motherCaseId)) {
            for (VisitView.ReadingView reading : visit.readings()) {
                Integer counted = reading.counted();
                if (counted == null || !reading.what().strip().equalsIgnoreCase("eggs")) {
                    continue;
                }
                Instant at = reading.at() == null ? visit.arrivedAt() : reading.at();
                String key = reading.id().toString();
                films.add(
                        new EggCount.Film(key, at, counted, reading.confidence().ordinal()));
                told.put(
                        key,
                        new ClutchViews.FilmCountView(
                                reading.id(),
                                visit.id(),
                                counted,
                                reading.reader(),
                                reading.confidence(),
                                at,
                                false,
                                0,
                                0));
            }
        }
        EggCount count = EggCount.of(films, outs, inside);
        return new ClutchViews.EggReconciliationView(
                count.verdict(),
                count.differsBy(),
                count.leftInside(),
                count.words(),
                count.films().stream()
                        .map(film -> compared(
                                Objects.requireNonNull(told.get(film.film().key())), film, count.taken()))
                        .toList());
    }

    private static ClutchViews.FilmCountView compared(
            ClutchViews.FilmCountView film, EggCount.Compared compared, EggCount.@Nullable Film taken) {
        return new ClutchViews.FilmCountView(
                film.readingId(),
                film.visitId(),
                film.counted(),
                film.reader(),
                film.confidence(),
                film.at(),
                compared.film().equals(taken),
                compared.accountedFor(),
                compared.differsBy());
    }

    private ClutchViews.EggsView view(EggRecovery row) {
        return new ClutchViews.EggsView(
                row.id(),
                row.recovered,
                row.setToIncubate,
                row.broken,
                row.discarded,
                row.howTheyCame(),
                row.happenedAt(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private ClutchViews.FailedEggsView view(FailedEggs row) {
        return new ClutchViews.FailedEggsView(
                row.id(),
                row.failed,
                ClutchEntries.FailureGrounds.valueOf(row.grounds),
                row.saidBy,
                row.words,
                row.at(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private ClutchViews.EggsInsideView view(EggsLeftInside row) {
        return new ClutchViews.EggsInsideView(
                row.id(),
                row.counted,
                row.reader,
                row.words,
                row.at(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private ClutchViews.SetUpView view(SetUp row) {
        return new ClutchViews.SetUpView(
                row.id(),
                row.medium,
                row.waterParts,
                row.mediumParts,
                row.box,
                row.topMarked,
                row.setUpBy,
                row.words,
                row.at(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private ClutchViews.CandlingView view(Candling row) {
        return new ClutchViews.CandlingView(
                row.id(),
                row.developing,
                row.notDeveloping,
                row.cannotTell,
                row.candledBy,
                row.words,
                row.at(),
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }

    private ClutchViews.TemperatureRecordView view(TemperatureRecord row) {
        return new ClutchViews.TemperatureRecordView(
                row.id(),
                row.kind,
                row.source,
                row.readings,
                row.at(),
                row.lastAt,
                row.lowestCelsius,
                row.highestCelsius,
                row.withdrawnAt,
                row.withdrawnBecause,
                records.of(row));
    }
}
