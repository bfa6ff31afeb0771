package org.culvert.animal.intake;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.call.CallService;
import org.culvert.call.PlaceReader;
import org.culvert.call.PlaceView;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.ledger.Corrections;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.roster.RosterService;
import org.jspecify.annotations.Nullable;

/** Keeps surges and their sectors. */
@ApplicationScoped
public class SurgeRegister {
    @ApplicationScoped
    static class Surges implements PanacheRepositoryBase<Surge, UUID> {}

    @ApplicationScoped
    static class Sectors implements PanacheRepositoryBase<SurgeSector, UUID> {}

    private final Surges surges;
    private final Sectors sectors;
    private final CallService calls;
    private final PlaceReader places;
    private final RosterService roster;
    private final RecordViews records;
    private final Actor actor;
    private final Clock clock;

    SurgeRegister(
            Surges surges,
            Sectors sectors,
            CallService calls,
            PlaceReader places,
            RosterService roster,
            RecordViews records,
            Actor actor,
            Clock clock) {
        this.surges = surges;
        this.sectors = sectors;
        this.calls = calls;
        this.places = places;
        this.roster = roster;
        this.records = records;
        this.actor = actor;
        this.clock = clock;
    }

    @Transactional
    public SurgeView declare(SurgeEntries.SurgeEntry entry) {
        boolean isOther = entry.kind() == SurgeEntries.SurgeKind.other;
        if (isOther == (entry.kindWords() == null || entry.kindWords().isBlank())) {
            throw InvalidException.of(
                    "kindWords",
                    isOther ? "It does not say of what kind." : "The kind says it.",
                    isOther ? "what it is" : "nothing, or the kind other");
        }
        Corrections.passed("from", entry.from(), clock);
        roster.getMember(entry.holderMemberId());
        var row = new Surge(entry, entry.tent() == null ? null : calls.keepFoundPlace("tent", entry.tent()));
        surges.persistAndFlush(row);
        return view(row);
    }

    /**
     * Surges, the latest first.
     *
     * @param open only those that go on, or only those that ended; null: all
     */
    @Transactional
    public List<SurgeView> listSurges(@Nullable Boolean open) {
        return views(surges.list("order by happenedAt desc, id desc").stream()
                .filter(row -> open == null || open == (row.endedAt == null))
                .toList());
    }

    @Transactional
    public SurgeView getSurge(UUID id) {
        return view(require(id));
    }

    @Transactional
    public SurgeView correct(UUID id, SurgeEntries.SurgeCorrection correction) {
        Surge row = require(id);
        UUID holder = correction.holderMemberId().value();
        if (holder != null) {
            roster.getMember(holder);
        }
        row.correct(correction, clock);
        if (row.endedAt != null && !row.endedAt.isAfter(row.from())) {
            throw InvalidException.of("from", "The surge ended before that.", "an instant before " + row.endedAt);
        }
        surges.flush();
        return view(row);
    }

    @Transactional
    public SurgeView end(UUID id, SurgeEntries.SurgeEnding ending) {
        Surge row = lock(id);
        Instant at = Corrections.passed("at", ending.at(), clock);
        if (!at.isAfter(row.from())) {
            throw InvalidException.of("at", "It ended before it began.", "an instant after " + row.from());
        }
        row.end(at, actor.accountId());
        surges.flush();
        return view(row);
    }

    @Transactional
    public SurgeView addSector(UUID id, SurgeEntries.SectorEntry entry) {
        Surge row = lock(id);
        sectors.persistAndFlush(new SurgeSector(id, entry, SectorArea.read(entry.area())));
        return view(row);
    }

    /** Whoever takes animals in waits here for others who do, until the transaction ends. */
    Surge lock(UUID id) {
        return surges.findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE)
                .orElseThrow(() -> new NotFoundException("surge", id));
    }

    Surge require(UUID id) {
        return surges.findByIdOptional(id).orElseThrow(() -> new NotFoundException("surge", id));
    }

    List<SurgeSector> sectorsOf(UUID surgeId) {
        return sectors.list("surgeId = ?1 order by code", surgeId);
    }

    private SurgeView view(Surge row) {
        return views(List.of(row)).get(0);
    }

    private List<SurgeView> views(List<Surge> rows) {
        List<SurgeSector> parts = rows.isEmpty()
                ? List.of()
                : sectors.list("surgeId in ?1", rows.stream().map(Surge::id).toList());
        records.lookUp(rows);
        records.lookUp(parts);
        Map<UUID, List<SurgeSector>> bySurge = parts.stream().collect(Collectors.groupingBy(part -> part.surgeId));
        Map<UUID, PlaceView> placeById = places.placesById(rows.stream()
                .map(row -> row.tentPlaceId)
                .filter(Objects::nonNull)
                .toList());
        return rows.stream()
                .map(row -> view(
                        row,
                        row.tentPlaceId == null ? null : placeById.get(row.tentPlaceId),
                        bySurge.getOrDefault(row.id(), List.of())))
                .toList();
    }

    private SurgeView view(Surge row, @Nullable PlaceView tent, List<SurgeSector> parts) {
        return new SurgeView(
                row.id(),
                row.name,
                SurgeEntries.SurgeKind.valueOf(row.kind),
                row.kindWords,
                row.from(),
                row.tentWords,
                tent == null ? null : Double.valueOf(tent.decimalLatitude()),
                tent == null ? null : Double.valueOf(tent.decimalLongitude()),
                tent == null ? null : Double.valueOf(tent.coordinateUncertaintyInMeters()),
                row.holderId,
                row.endedAt,
                row.endedBy,
                parts.stream()
                        .sorted(Comparator.comparing((SurgeSector part) -> part.code))
                        .map(part -> new SurgeView.SectorView(
                                part.id(), part.code, part.words, part.areaWords, part.area, records.of(part)))
                        .toList(),
                records.of(row));
    }
}
