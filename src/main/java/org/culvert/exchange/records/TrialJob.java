package org.culvert.exchange.records;

import io.micrometer.core.annotation.Timed;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.culvert.exchange.reading.FileSigns;
import org.culvert.exchange.records.TrialRun.FindingCount;
import org.culvert.geo.Bounds;
import org.culvert.platform.ConflictException;
import org.culvert.platform.CulvertException;
import org.culvert.platform.Job;
import org.culvert.platform.Region;
import org.culvert.platform.RegionService;
import org.culvert.platform.Rows;
import org.culvert.road.CurrentRoads;
import org.culvert.road.ManyPlaces;
import org.culvert.road.PlacesOnRoads;
import org.culvert.taxon.SynonymService;
import org.culvert.taxon.TaxonService;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Tries a file: reads every row, looks up what it tells of, and notes what would become of it. Nothing is entered. */
@ApplicationScoped
class TrialJob implements Job {
    static final String NAME = "record-trial";

    private static final Logger LOG = Logger.getLogger(TrialJob.class);
    private static final Duration BETWEEN_NOTES = Duration.ofMillis(500);
    private static final int MOST_WORDS_TOLD = 200;

    private final TrialService.Trials trials;
    private final TrialService.Progresses progresses;
    private final TrialStanding standing;
    private final RecordRows rows;
    private final ManyPlaces places;
    private final TaxonService taxa;
    private final SynonymService synonyms;
    private final RegionService regions;
    private final EntityManager entities;
    private final DataSource database;
    private final Clock clock;

    TrialJob(
            TrialService.Trials trials,
            TrialService.Progresses progresses,
            TrialStanding standing,
            RecordRows rows,
            ManyPlaces places,
            TaxonService taxa,
            SynonymService synonyms,
            RegionService regions,
            EntityManager entities,
            DataSource database,
            Clock clock) {
        this.trials = trials;
        this.progresses = progresses;
        this.standing = standing;
        this.rows = rows;
        this.places = places;
        this.taxa = taxa;
        this.synonyms = synonyms;
        this.regions = regions;
        this.entities = entities;
        this.database = database;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    private record Order(UUID id, UUID recordFileId, UUID readingId) {}

    @Override
    @Timed("culvert.records.trial")
    public void run(UUID id) {
        Order order = begin(id);
        if (order == null) {
            return;
        }
        try {
            run(order);
        } catch (CulvertException e) {
            // Nothing that trying again would mend, such as a file that was called off meanwhile
            LOG.infof("Trial %s cannot be made: %s", id, e.getMessage());
            gaveUp(id, String.valueOf(e.getMessage()));
        } catch (SQLException e) {
            throw new IllegalStateException("the rows of a trial cannot be kept", e);
        }
    }

    @Override
    public void gaveUp(UUID id, String reason) {
        QuarkusTransaction.requiringNew().run(() -> {
            TrialProgress progress = progresses.findById(id);
            if (progress != null && progress.finishedAt == null) {
                progress.fail(clock.instant(), reason);
            }
        });
    }

    /** What is asked for, or null where it is done already. Rows of a trial that was cut off, or of an earlier one, go. */
    private @Nullable Order begin(UUID id) {
        return QuarkusTransaction.requiringNew().timeout(600).call(() -> {
            RecordTrial trial = trials.findById(id);
            TrialProgress before = progresses.findById(id);
            if (trial == null || (before != null && before.finishedAt != null)) {
                return null;
            }
            if (before == null) {
                progresses.persist(new TrialProgress(id, clock.instant()));
            } else {
                before.beginAgain(clock.instant());
            }
            entities.createNativeQuery("select cast(personal.clear_trial_rows(?1) as text)")
                    .setParameter(1, trial.recordFileId)
                    .getResultList();
            return new Order(id, trial.recordFileId, trial.readingId);
        });
    }

    private void run(Order order) throws SQLException {
        PlacesOnRoads roads = places.open();
        var animals = QuarkusTransaction.requiringNew()
                .call(() -> new AnimalWords(taxa.findTaxa(null), taxa.listGroups(), synonyms.listCurrent()));
        ZoneId zone = regions.zone();
        Instant now = clock.instant();
        Bounds region = regions.findRegion().map(TrialJob::box).orElse(null);
        var judge = new RowJudge(animals, roads, region, zone, causes(), now);
        FileSigns signs;
        Map<FindingCount, Long> findings;
        try (Connection connection = database.getConnection();
                var run = new TrialRun(order.id(), judge, connection, notes(order))) {
            signs = rows.read(order.readingId(), LocalDate.ofInstant(now, zone), run);
            run.finish();
            findings = new TreeMap<>(run.findings());
        }
        new TrialComparison(database, order.id()).compare(findings);
        finish(order, roads, signs, new RecordTrialSummary(counts(findings), unknown(animals)));
    }

    private static Bounds box(Region region) {
        return new Bounds(region.south(), region.west(), region.north(), region.east());
    }

    private Set<String> causes() {
        return QuarkusTransaction.requiringNew()
                .call(() ->
                        new TreeSet<>(Rows.column(entities.createNativeQuery("select key from causes"), String.class)));
    }

    /** Notes now and then how far it has come, and stops where the file was called off meanwhile. */
    private Consumer<TrialRun> notes(Order order) {
        Instant[] last = {clock.instant()};
        return run -> {
            Instant now = clock.instant();
            if (Duration.between(last[0], now).compareTo(BETWEEN_NOTES) >= 0) {
                last[0] = now;
                QuarkusTransaction.requiringNew().run(() -> {
                    if (standing.isCalledOff(order.recordFileId())) {
                        throw new ConflictException("The file was called off while it was tried.");
                    }
                    TrialProgress progress = progresses.findById(order.id());
                    progress.rowsRead = run.rows();
                    progress.rowsRight = run.rows(Verdict.right);
                    progress.rowsDoubtful = run.rows(Verdict.doubtful);
                    progress.rowsApart = run.rows(Verdict.apart);
                    progress.rowsRefused = run.rows(Verdict.refused);
                });
            }
        };
    }

    private static List<RecordTrialSummary.FindingCountView> counts(Map<FindingCount, Long> findings) {
        List<Map.Entry<FindingCount, Long>> entries = new ArrayList<>(findings.entrySet());
        entries.sort(Comparator.<Map.Entry<FindingCount, Long>>comparingInt(
                        entry -> -entry.getKey().weight().ordinal())
                .thenComparing(entry -> -entry.getValue()));
        return entries.stream()
                .map(entry -> new RecordTrialSummary.FindingCountView(
                        entry.getKey().kind().name(), entry.getKey().weight().name(), entry.getValue()))
                .toList();
    }

    private static List<RecordTrialSummary.UnknownAnimalView> unknown(AnimalWords animals) {
        return animals.listUnknown(MOST_WORDS_TOLD).stream()
                .map(one -> new RecordTrialSummary.UnknownAnimalView(one.words(), one.rows(), one.perhaps()))
                .toList();
    }

    private void finish(Order order, PlacesOnRoads roads, FileSigns signs, RecordTrialSummary summary)
            throws SQLException {
        Map<Verdict, Long> counts = countVerdicts(order.id());
        QuarkusTransaction.requiringNew().run(() -> {
            TrialProgress progress = progresses.findById(order.id());
            progress.rowsRight = counts.getOrDefault(Verdict.right, 0L);
            progress.rowsDoubtful = counts.getOrDefault(Verdict.doubtful, 0L);
            progress.rowsApart = counts.getOrDefault(Verdict.apart, 0L);
            progress.rowsRefused = counts.getOrDefault(Verdict.refused, 0L);
            progress.rowsRead =
                    counts.values().stream().mapToLong(Long::longValue).sum();
            progress.networkNumber = roads.roads().map(CurrentRoads::number).orElse(null);
            progress.signs = new RecordTrialSigns(
                    signs.findings().stream().map(RecordFindingView::of).toList());
            progress.summary = summary;
            progress.finishedAt = clock.instant();
        });
    }

    private Map<Verdict, Long> countVerdicts(UUID trialId) throws SQLException {
        Map<Verdict, Long> counts = new EnumMap<>(Verdict.class);
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(
                        "select verdict, count(*) from personal.record_trial_rows where trial_id = ? group by verdict")) {
            query.setObject(1, trialId);
            try (ResultSet found = query.executeQuery()) {
                while (found.next()) {
                    counts.put(Verdict.valueOf(found.getString(1)), found.getLong(2));
                }
            }
        }
        return counts;
    }
}
