package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Keeps what is seen of eggs while they lie: how they are set up, what candling showed, which were given up. */
@ApplicationScoped
public class ClutchLog {
    private final ClutchRepositories.Clutches clutches;
    private final ClutchRepositories.EggRecoveries recoveries;
    private final ClutchRepositories.Failures failures;
    private final ClutchRepositories.InsideReadings insides;
    private final ClutchRepositories.SetUps setUps;
    private final ClutchRepositories.Candlings candlings;
    private final ClutchRepositories.TemperatureRecords temperatures;
    private final ClutchReader reader;
    private final Clock clock;

    ClutchLog(
            ClutchRepositories.Clutches clutches,
            ClutchRepositories.EggRecoveries recoveries,
            ClutchRepositories.Failures failures,
            ClutchRepositories.InsideReadings insides,
            ClutchRepositories.SetUps setUps,
            ClutchRepositories.Candlings candlings,
            ClutchRepositories.TemperatureRecords temperatures,
            ClutchReader reader,
            Clock clock) {
        this.clutches = clutches;
        this.recoveries = recoveries;
        this.failures = failures;
        this.insides = insides;
        this.setUps = setUps;
        this.candlings = candlings;
        this.temperatures = temperatures;
        this.reader = reader;
        this.clock = clock;
    }

    /** Somebody gives eggs up; no more than were set, less those that hatched. */
    @Transactional
    public ClutchViews.ClutchView fail(UUID id, ClutchEntries.FailedEggsEntry entry) {
        Clutch clutch = require(id);
        failures.persistAndFlush(new FailedEggs(id, entry, passed(entry.at())));
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView correctFailed(
            UUID id, UUID failureId, ClutchCorrections.FailedEggsCorrection correction) {
        Clutch clutch = require(id);
        failures.findByIdOptional(failureId)
                .filter(row -> row.clutchId.equals(id))
                .orElseThrow(() -> new NotFoundException("failed eggs of that clutch", failureId))
                .correct(correction, clock);
        failures.flush();
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView readInside(UUID id, ClutchEntries.EggsInsideEntry entry) {
        Clutch clutch = require(id);
        insides.persistAndFlush(new EggsLeftInside(id, entry, passed(entry.at())));
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView setUp(UUID id, ClutchEntries.SetUpEntry entry) {
        Clutch clutch = require(id);
        if ((entry.waterParts() == null) != (entry.mediumParts() == null)) {
            throw InvalidException.of(
                    entry.waterParts() == null ? "waterParts" : "mediumParts",
                    "A ratio by weight has both of its parts.",
                    "waterParts and mediumParts, such as 1 and 1, or neither");
        }
        setUps.persistAndFlush(new SetUp(id, entry, passed(entry.at())));
        return reader.view(clutch);
    }

    @Transactional
    public ClutchViews.ClutchView candle(UUID id, ClutchEntries.CandlingEntry entry) {
        Clutch clutch = require(id);
        int candled = entry.developing() + entry.notDeveloping() + entry.cannotTell();
        int set = recoveries.list("clutchId = ?1 and withdrawnAt is null", id).stream()
                .mapToInt(row -> row.setToIncubate)
                .sum();
        if (candled < 1 || candled > set) {
            throw InvalidException.of(
                    "developing",
                    candled + " eggs are told of, and " + set + " were set.",
                    "developing + notDeveloping + cannotTell from 1 to " + set);
        }
        candlings.persistAndFlush(new Candling(id, entry, passed(entry.at())));
        return reader.view(clutch);
    }

    /**
     * Takes back an entry of any kind but a hatching, whose animals are cases of their own; it stays readable, and counts for
     * nothing.
     */
    @Transactional
    public ClutchViews.ClutchView withdraw(UUID id, UUID partId, String reason) {
        Clutch clutch = require(id);
        List.of(recoveries, failures, insides, setUps, candlings, temperatures).stream()
                .map(rows -> (ClutchPart) rows.findById(partId))
                .filter(Objects::nonNull)
                .filter(part -> part.clutchId.equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("entry of that clutch", partId))
                .withdraw(clock.instant(), reason);
        clutches.flush();
        return reader.view(clutch);
    }

    private Instant passed(@Nullable Instant at) {
        return Corrections.passed("at", at, clock);
    }

    private Clutch require(UUID id) {
        return clutches.findByIdOptional(id).orElseThrow(() -> new NotFoundException("clutch", id));
    }
}
