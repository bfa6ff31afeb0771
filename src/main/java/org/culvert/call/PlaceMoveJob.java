package org.culvert.call;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.culvert.geo.Position;
import org.culvert.platform.Actor;
import org.culvert.platform.Job;
import org.culvert.platform.Rows;
import org.culvert.road.CurrentRoads;
import org.culvert.road.OldLinks;
import org.culvert.road.PlaceMoved;
import org.culvert.road.PlaceMover;
import org.culvert.road.PlaceUnderstood;
import org.culvert.road.PlacedBefore;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/**
 * Moves places from older versions of the roads to the current one, some at a time. Begun anew it goes on with those that it
 * has not looked at.
 */
@ApplicationScoped
class PlaceMoveJob implements Job {
    static final String NAME = "place-move";

    private static final int SOME = 200;

    private static final String ON_OLDER_ROADS = " FROM places p JOIN road_links l ON l.id = p.road_link_id"
            + " WHERE l.road_network_id <> :network AND NOT EXISTS (SELECT FROM moved_places m"
            + " WHERE m.place_move_id = :move AND m.place_id = p.id)";

    private final PlaceMoveService.Moves moves;
    private final PlaceMoveService.Progresses progresses;
    private final Ledger.Places places;
    private final RoadService roads;
    private final OldLinks oldLinks;
    private final EntityManager entities;
    private final Clock clock;

    PlaceMoveJob(
            PlaceMoveService.Moves moves,
            PlaceMoveService.Progresses progresses,
            Ledger.Places places,
            RoadService roads,
            OldLinks oldLinks,
            EntityManager entities,
            Clock clock) {
        this.moves = moves;
        this.progresses = progresses;
        this.places = places;
        this.roads = roads;
        this.oldLinks = oldLinks;
        this.entities = entities;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public void run(UUID id) {
        CurrentRoads current = roads.current();
        PlaceMove move = QuarkusTransaction.requiringNew().call(() -> begin(id, current));
        if (move == null) {
            return;
        }
        var mover = new PlaceMover(current);
        Actor.actFor(move.recordedBy(), () -> {
            UUID last = null;
            do {
                UUID after = last;
                last = QuarkusTransaction.requiringNew().call(() -> moveSome(id, mover, current, after));
            } while (last != null);
            return null;
        });
        QuarkusTransaction.requiringNew().run(() -> progresses.findById(id).finishedAt = clock.instant());
    }

    /** Null where there is nothing to do: it is done, or a newer version came meanwhile, to which another one moves. */
    private @Nullable PlaceMove begin(UUID id, CurrentRoads current) {
        PlaceMove move = moves.findById(id);
        if (move == null) {
            return null;
        }
        PlaceMoveProgress before = progresses.findById(id);
        if (before == null) {
            before = new PlaceMoveProgress(id, clock.instant(), count(id, move.roadNetworkId));
            progresses.persist(before);
        } else if (before.finishedAt == null) {
            before.beginAgain(clock.instant());
        }
        if (!current.networkId().equals(move.roadNetworkId)) {
            before.fail(clock.instant(), "A newer version of the roads was imported; places are moved to that.");
            return null;
        }
        return before.finishedAt == null ? move : null;
    }

    private int count(UUID id, UUID networkId) {
        return ((Number) entities.createNativeQuery("SELECT count(*)" + ON_OLDER_ROADS, Object.class)
                        .setParameter("network", networkId)
                        .setParameter("move", id)
                        .getSingleResult())
                .intValue();
    }

    @Override
    public void gaveUp(UUID id, String reason) {
        QuarkusTransaction.requiringNew().run(() -> {
            PlaceMoveProgress progress = progresses.findById(id);
            if (progress != null) {
                progress.fail(clock.instant(), reason);
            }
        });
    }

    /** @return the last place that was looked at, or null where there is none left */
    private @Nullable UUID moveSome(UUID id, PlaceMover mover, CurrentRoads current, @Nullable UUID after) {
        List<UUID> some = Rows.column(
                entities.createNativeQuery("SELECT p.id" + ON_OLDER_ROADS
                                + " AND (CAST(:after AS uuid) IS NULL OR p.id > CAST(:after AS uuid))"
                                + " ORDER BY p.id LIMIT " + SOME)
                        .setParameter("network", current.networkId())
                        .setParameter("move", id)
                        .setParameter("after", after),
                UUID.class);
        if (some.isEmpty()) {
            return null;
        }
        List<Place> rows = places.list("id in ?1", some);
        List<UUID> links = new ArrayList<>();
        for (Place place : rows) {
            links.add(place.roadLinkId);
            place.otherRoads.forEach(other -> links.add(other.roadLinkId()));
        }
        Map<UUID, OldLinks.OldLink> known = oldLinks.find(links);
        Map<UUID, UUID> from = new HashMap<>();
        Map<UUID, PlaceMoved> outcomes = new HashMap<>();
        for (Place place : rows) {
            from.put(place.id(), place.roadLinkId);
            PlaceMoved moved = mover.move(before(place, known));
            outcomes.put(place.id(), moved);
            if (moved.onRoad() != null) {
                place.move(
                        moved.onRoad(),
                        moved.roadInDoubt(),
                        moved.otherRoads(),
                        "moved to version " + current.number() + " of the roads");
            }
        }
        entities.flush();
        outcomes.forEach((place, moved) -> tell(id, place, moved, Objects.requireNonNull(from.get(place))));
        return some.get(some.size() - 1);
    }

    private static PlacedBefore before(Place place, Map<UUID, OldLinks.OldLink> links) {
        UUID linkId = Objects.requireNonNull(place.roadLinkId);
        OldLinks.OldLink link = Objects.requireNonNull(links.get(linkId));
        double along = Objects.requireNonNullElse(place.metresAlongLink, 0.0);
        List<PlacedBefore.OtherPlace> others = new ArrayList<>();
        for (PlaceUnderstood.OnRoad other : place.otherRoads) {
            OldLinks.OldLink beside = links.get(other.roadLinkId());
            others.add(new PlacedBefore.OtherPlace(
                    beside == null ? null : beside.lastingId(),
                    beside == null ? 0 : beside.part(other.metresAlongLink()),
                    new Position(other.decimalLatitude(), other.decimalLongitude())));
        }
        return new PlacedBefore(
                place.givenAs,
                place.verbatim,
                new Position(place.decimalLatitude, place.decimalLongitude),
                place.coordinateUncertaintyInMeters,
                link.positionAt(along),
                link.lastingId(),
                link.part(along),
                Objects.requireNonNullElse(place.roadName, ""),
                place.carriageway,
                place.chainageMetres,
                place.chainagePrecisionMetres,
                place.roadIsInDoubt,
                others);
    }

    private void tell(UUID id, UUID placeId, PlaceMoved moved, UUID fromLink) {
        entities.createNativeQuery("INSERT INTO moved_places (place_move_id, place_id, outcome, metres, from_link_id,"
                        + " to_link_id, recorded_at) VALUES (:move, :place, :outcome, :metres, :from, :to, :at)")
                .setParameter("move", id)
                .setParameter("place", placeId)
                .setParameter("outcome", moved.outcome().name())
                .setParameter("metres", moved.metres())
                .setParameter("from", fromLink)
                .setParameter(
                        "to", moved.onRoad() == null ? null : moved.onRoad().roadLinkId())
                .setParameter("at", clock.instant())
                .executeUpdate();
    }
}
