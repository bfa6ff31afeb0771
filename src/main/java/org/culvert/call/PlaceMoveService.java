package org.culvert.call;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.JobQueue;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Rows;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.NetworkListener;
import org.culvert.road.PlaceMoved;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkView;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Has places moved from older versions of the roads to the current one, and tells what became of them. */
@ApplicationScoped
public class PlaceMoveService implements NetworkListener {
    @ApplicationScoped
    static class Moves implements PanacheRepositoryBase<PlaceMove, UUID> {}

    @ApplicationScoped
    static class Progresses implements PanacheRepositoryBase<PlaceMoveProgress, UUID> {}

    private final Moves moves;
    private final Progresses progresses;
    private final RoadNetworkService networks;
    private final JobQueue queue;
    private final EntityManager entities;
    private final RecordViews records;
    private final boolean onImport;

    PlaceMoveService(
            Moves moves,
            Progresses progresses,
            RoadNetworkService networks,
            JobQueue queue,
            EntityManager entities,
            RecordViews records,
            @ConfigProperty(name = "culvert.roads.move-places-on-import") boolean onImport) {
        this.moves = moves;
        this.progresses = progresses;
        this.networks = networks;
        this.queue = queue;
        this.entities = entities;
        this.records = records;
        this.onImport = onImport;
    }

    @Override
    @Transactional
    public void becameCurrent(UUID networkId) {
        boolean any = (Boolean)
                entities.createNativeQuery("SELECT EXISTS (SELECT FROM places WHERE road_link_id IS NOT NULL)")
                        .getSingleResult();
        if (onImport && any) {
            ask(networkId);
        }
    }

    /**
     * Has the places moved that are on older versions.
     *
     * @throws ConflictException if the version is no longer the current one
     */
    @Transactional
    public PlaceMoveView start(UUID networkId) {
        List<RoadNetworkView> known = networks.listNetworks();
        if (known.stream().noneMatch(network -> network.id().equals(networkId))) {
            throw new NotFoundException("road network", networkId);
        }
        if (!known.get(0).id().equals(networkId)) {
            throw new ConflictException("There is a newer version of the roads, "
                    + known.get(0).id() + "; places are moved to the current one.");
        }
        return view(ask(networkId));
    }

    private PlaceMove ask(UUID networkId) {
        var move = new PlaceMove(networkId);
        moves.persistAndFlush(move);
        queue.enqueue(PlaceMoveJob.NAME, move.id());
        return move;
    }

    @Transactional
    public PlaceMoveView getMove(UUID id) {
        return view(require(id));
    }

    /** Movings to a version of the roads, newest first. */
    @Transactional
    public List<PlaceMoveView> listMoves(UUID networkId) {
        return moves.list("roadNetworkId = ?1 order by id desc", networkId).stream()
                .map(this::view)
                .toList();
    }

    private PlaceMove require(UUID id) {
        return moves.findByIdOptional(id).orElseThrow(() -> new NotFoundException("place move", id));
    }

    private PlaceMoveView view(PlaceMove move) {
        PlaceMoveProgress progress = progresses.findById(move.id());
        SortedMap<String, Integer> outcomes = new TreeMap<>();
        for (PlaceMoved.Outcome outcome : PlaceMoved.Outcome.values()) {
            outcomes.put(outcome.name(), 0);
        }
        Double farthest = null;
        List<Object[]> counted = entities.createNativeQuery(
                        "SELECT outcome, count(*), max(metres) FROM moved_places WHERE place_move_id = ?1"
                                + " GROUP BY outcome",
                        Object[].class)
                .setParameter(1, move.id())
                .getResultList();
        for (Object[] row : counted) {
            outcomes.put((String) row[0], ((Number) row[1]).intValue());
            farthest = row[2] == null ? farthest : Rows.number(row[2]);
        }
        int number = ((Number)
                        entities.createNativeQuery("SELECT number FROM road_networks WHERE id = ?1", Object.class)
                                .setParameter(1, move.roadNetworkId)
                                .getSingleResult())
                .intValue();
        return new PlaceMoveView(
                move.id(),
                move.roadNetworkId,
                number,
                state(progress),
                progress == null ? null : progress.places,
                outcomes.values().stream().mapToInt(Integer::intValue).sum(),
                outcomes,
                farthest,
                progress == null ? null : progress.finishedAt,
                progress == null ? null : progress.failure,
                records.of(move));
    }

    private static String state(@Nullable PlaceMoveProgress progress) {
        if (progress == null) {
            return "waiting";
        }
        return progress.finishedAt != null ? "done" : progress.failedAt != null ? "failed" : "underway";
    }

    /**
     * What became of the places, in the order of their identifiers.
     *
     * @param outcome those of one outcome alone, or null
     * @param after the place after which the page begins
     */
    @Transactional
    public Page<PlaceMoveView.MovedPlace> listPlaces(
            UUID id, @Nullable String outcome, int limit, @Nullable UUID after) {
        require(id);
        if (outcome != null && !isOutcome(outcome)) {
            throw InvalidException.of(
                    "outcome", "There is no such outcome.", "moved, noRoad, roadInDoubt or otherChainage");
        }
        List<Object[]> rows = entities.createNativeQuery("""
                        SELECT m.place_id, i.id AS incident, i.number, m.outcome, m.metres, m.from_link_id, m.to_link_id,
                            m.recorded_at
                        FROM moved_places m
                        LEFT JOIN LATERAL (SELECT id, number FROM incidents WHERE place_id = m.place_id
                                           ORDER BY number LIMIT 1) i ON true
                        WHERE m.place_move_id = :move AND (CAST(:outcome AS text) IS NULL OR m.outcome = :outcome)
                            AND (CAST(:after AS uuid) IS NULL OR m.place_id > CAST(:after AS uuid))
                        ORDER BY m.place_id LIMIT :limit
                        """, Object[].class)
                .setParameter("move", id)
                .setParameter("outcome", outcome)
                .setParameter("after", after)
                .setParameter("limit", limit + 1)
                .getResultList();
        List<PlaceMoveView.MovedPlace> places = new ArrayList<>();
        for (Object[] row : rows) {
            places.add(new PlaceMoveView.MovedPlace(
                    (UUID) row[0],
                    (UUID) row[1],
                    row[2] == null ? null : Long.valueOf(((Number) row[2]).longValue()),
                    (String) row[3],
                    Rows.number(row[4]),
                    (UUID) row[5],
                    (UUID) row[6],
                    Objects.requireNonNull(Rows.instant(row[7]))));
        }
        return Page.of(places, limit, place -> place, place -> place.placeId().toString());
    }

    private static boolean isOutcome(String word) {
        for (PlaceMoved.Outcome outcome : PlaceMoved.Outcome.values()) {
            if (outcome.name().equals(word)) {
                return true;
            }
        }
        return false;
    }
}
