package org.culvert.road;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.culvert.geo.Shapes;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.network.LinkMatching;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.NetworkFrame;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLink;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.LineString;

/** Keeps networks in the database and brings them back. Links go by JDBC in batches: there may be hundreds of thousands. */
@ApplicationScoped
class NetworkStore {
    private static final int BATCH = 1000;
    private static final int LONGEST_IMPORT_SECONDS = 1800;

    private static final String INSERT_LINK = """
            INSERT INTO road_links (id, road_network_id, position, from_node, to_node, line_key, line_number, road_name, ref,
                road_class, speed_limit_kmh, aadt, owner, carriageway, level, structure, from_chainage_metres,
                length_metres, course, one_way, lanes, lasting_id)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private static final String SELECT_LINKS = """
            SELECT id, from_node, to_node, line_key, line_number, road_name, ref, road_class, speed_limit_kmh, aadt, owner,
                carriageway, level, structure, from_chainage_metres, course, one_way, lanes, lasting_id
            FROM road_links WHERE road_network_id = ? ORDER BY position
            """;

    @ApplicationScoped
    static class Versions implements PanacheRepositoryBase<NetworkVersion, UUID> {}

    private final Versions versions;
    private final EntityManager entityManager;
    private final RecordViews records;
    private final Clock clock;
    private final Actor actor;
    private final Instance<NetworkListener> listeners;

    NetworkStore(
            Versions versions,
            EntityManager entityManager,
            RecordViews records,
            Clock clock,
            Actor actor,
            Instance<NetworkListener> listeners) {
        this.listeners = listeners;
        this.versions = versions;
        this.entityManager = entityManager;
        this.records = records;
        this.clock = clock;
        this.actor = actor;
    }

    /** What to keep of an import besides the network itself. */
    record Provenance(
            String name,
            String sourceCrs,
            String sha256,
            Map<String, String> attributeNames,
            Map<String, Integer> notUnderstood) {}

    /** A network version with its links' identifiers, in the order of the network's links. */
    record Kept(RoadNetworkView view, CurrentRoads roads) {}

    /** Identifier and number of the newest network. */
    record Newest(UUID id, int number) {}

    @Transactional
    Optional<Newest> findNewest() {
        List<Newest> newest = entityManager
                .createQuery(
                        "select new org.culvert.road.NetworkStore$Newest(v.id, v.number) from NetworkVersion v"
                                + " order by v.number desc",
                        Newest.class)
                .setMaxResults(1)
                .getResultList();
        return newest.stream().findFirst();
    }

    @Transactional
    List<RoadNetworkView> listVersions() {
        return versions.list("order by number desc").stream()
                .map(version -> version.view(records))
                .toList();
    }

    /**
     * Keeps a network as the next version. One import at a time gets a number.
     *
     * @param before the version before it, whose links keep their identity where their course is the same
     */
    Kept keep(NetworkBuilder.Built built, Provenance provenance, @Nullable CurrentRoads before, ReadingWatch watch) {
        return QuarkusTransaction.joiningExisting()
                .timeout(LONGEST_IMPORT_SECONDS)
                .call(() -> keepNow(built, provenance, before, watch));
    }

    private Kept keepNow(
            NetworkBuilder.Built built, Provenance provenance, @Nullable CurrentRoads before, ReadingWatch watch) {
        entityManager
                .createNativeQuery("SELECT pg_advisory_xact_lock(hashtext('road_networks'))", Object.class)
                .getSingleResult();
        int number = findNewest().map(Newest::number).orElse(0) + 1;
        if (number != (before == null ? 1 : before.number() + 1)) {
            throw new ConflictException("Another network was imported at the same moment; send it again.");
        }
        RoadNetwork network = built.network();
        int[] same = before == null ? new int[0] : LinkMatching.match(before.network(), network);
        NetworkVersion version = NetworkVersion.of(
                number,
                provenance.name(),
                provenance.sourceCrs(),
                provenance.sha256(),
                provenance.attributeNames(),
                network.frame().bounds(),
                built.report(),
                provenance.notUnderstood());
        version.keptLinks = (int) IntStream.of(same).filter(link -> link >= 0).count();
        version.importedBy(noteImport(provenance));
        versions.persistAndFlush(version);
        UUID[] ids = new UUID[network.linkCount()];
        UUID[] lastingIds = new UUID[ids.length];
        for (int link = 0; link < ids.length; link++) {
            ids[link] = UUID.randomUUID();
            lastingIds[link] = before == null || same[link] < 0 ? ids[link] : before.lastingId(same[link]);
        }
        entityManager
                .unwrap(Session.class)
                .doWork(connection -> insertLinks(connection, version.id(), network, ids, lastingIds, watch));
        listeners.forEach(listener -> listener.becameCurrent(version.id()));
        return new Kept(version.view(records), new CurrentRoads(version.id(), number, network, ids, lastingIds));
    }

    private UUID noteImport(Provenance provenance) {
        UUID id = UUID.randomUUID();
        entityManager
                .createNativeQuery("INSERT INTO imports (id, kind, file_name, sha256, recorded_at, recorded_by)"
                        + " VALUES (?1, 'roadNetwork', ?2, ?3, ?4, ?5)")
                .setParameter(1, id)
                .setParameter(2, provenance.name())
                .setParameter(3, provenance.sha256())
                .setParameter(4, OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                .setParameter(5, actor.accountId())
                .executeUpdate();
        return id;
    }

    private static void insertLinks(
            Connection connection,
            UUID networkId,
            RoadNetwork network,
            UUID[] ids,
            UUID[] lastingIds,
            ReadingWatch watch)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_LINK)) {
            for (int link = 0; link < ids.length; link++) {
                RoadLink row = network.link(link);
                RoadAttributes known = row.attributes();
                insert.setObject(1, ids[link]);
                insert.setObject(2, networkId);
                insert.setInt(3, link);
                insert.setInt(4, row.fromNode());
                insert.setInt(5, row.toNode());
                insert.setString(6, row.lineKey());
                insert.setInt(7, row.lineNumber());
                insert.setString(8, known.roadName());
                insert.setString(9, known.ref());
                insert.setString(10, known.roadClass());
                insert.setObject(11, known.speedLimitKmh(), Types.INTEGER);
                insert.setObject(12, known.aadt(), Types.INTEGER);
                insert.setString(13, known.owner());
                insert.setString(14, known.carriageway());
                insert.setInt(15, known.level());
                insert.setString(16, known.structure().name().toLowerCase(Locale.ROOT));
                insert.setDouble(17, row.fromChainageMetres());
                insert.setDouble(18, network.graph().length(link));
                insert.setBytes(19, Shapes.wkb(Shapes.line(row.vertices())));
                insert.setObject(20, known.oneWay(), Types.BOOLEAN);
                insert.setObject(21, known.lanes(), Types.INTEGER);
                insert.setObject(22, lastingIds[link]);
                insert.addBatch();
                if ((link + 1) % BATCH == 0) {
                    insert.executeBatch();
                    watch.hear(ReadingWatch.Step.keeping, link + 1, ids.length);
                }
            }
            insert.executeBatch();
        }
    }

    /** Brings a network back as it was built. */
    CurrentRoads load(UUID networkId) {
        return QuarkusTransaction.joiningExisting()
                .timeout(LONGEST_IMPORT_SECONDS)
                .call(() -> loadNow(networkId));
    }

    private CurrentRoads loadNow(UUID networkId) {
        NetworkVersion version = versions.findById(networkId);
        List<RoadLink> links = new ArrayList<>(version.linkCount);
        List<UUID> ids = new ArrayList<>(version.linkCount);
        List<UUID> lastingIds = new ArrayList<>(version.linkCount);
        entityManager
                .unwrap(Session.class)
                .doWork(connection -> selectLinks(connection, networkId, links, ids, lastingIds));
        RoadNetwork network = RoadNetwork.of(NetworkFrame.geographic(version.bounds()), version.nodeCount, links);
        return new CurrentRoads(
                networkId, version.number, network, ids.toArray(UUID[]::new), lastingIds.toArray(UUID[]::new));
    }

    private static void selectLinks(
            Connection connection, UUID networkId, List<RoadLink> links, List<UUID> ids, List<UUID> lastingIds)
            throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(SELECT_LINKS)) {
            select.setObject(1, networkId);
            select.setFetchSize(5000);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    ids.add(row.getObject(1, UUID.class));
                    lastingIds.add(row.getObject(19, UUID.class));
                    links.add(linkOf(row));
                }
            }
        }
    }

    private static RoadLink linkOf(ResultSet row) throws SQLException {
        RoadAttributes known = new RoadAttributes(
                row.getString(6),
                row.getString(7),
                row.getString(8),
                integer(row, 9),
                integer(row, 10),
                row.getString(11),
                row.getString(12),
                row.getInt(13),
                Structure.valueOf(row.getString(14).toUpperCase(Locale.ROOT)),
                row.getObject(17, Boolean.class),
                integer(row, 18));
        LineString course = (LineString) Shapes.fromWkb(row.getBytes(16));
        return new RoadLink(
                row.getInt(2),
                row.getInt(3),
                row.getString(4),
                row.getInt(5),
                known,
                row.getDouble(15),
                Shapes.longitudeLatitude(course));
    }

    private static @Nullable Integer integer(ResultSet row, int column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? null : value;
    }

    /** What is known of a link of any version. */
    @Transactional
    Optional<RoadFacts.LinkFacts> findFacts(UUID linkId) {
        List<Object[]> rows = entityManager
                .createNativeQuery(
                        "SELECT coalesce(road_name, ref, 'unnamed ' || coalesce(road_class, 'road') || ' (' || line_key"
                                + " || ')'), road_class, speed_limit_kmh, aadt, owner FROM road_links WHERE id = ?1",
                        Object[].class)
                .setParameter(1, linkId)
                .getResultList();
        return rows.stream()
                .findFirst()
                .map(row -> new RoadFacts.LinkFacts(
                        linkId, (String) row[0], (String) row[1], number(row[2]), number(row[3]), (String) row[4]));
    }

    private static @Nullable Double number(@Nullable Object column) {
        return column == null ? null : Double.valueOf(((Number) column).doubleValue());
    }
}
