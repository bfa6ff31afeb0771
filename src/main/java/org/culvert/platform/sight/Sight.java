package org.culvert.platform.sight;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/** What whoever asks may see: by the table, by whose a record is, and by how sensitive its place is. */
@ApplicationScoped
public class Sight {
    /** Strictness of a withheld place: stricter than any grid. The others are the grid in degrees; 0 is not sensitive. */
    public static final double WITHHELD = 360;

    private final SightTable table = SightTable.load();
    private final Viewers viewers;
    private final Viewers.Known known;
    private final DataSource database;

    Sight(Viewers viewers, Viewers.Known known, DataSource database) {
        this.viewers = viewers;
        this.known = known;
        this.database = database;
    }

    public Viewer viewer() {
        return viewers.current();
    }

    SightTable table() {
        return table;
    }

    Right right(String resource, String field) {
        return table.right(resource, field, viewers.current().roles());
    }

    /** Whether the asker sees a field of a kind of record at all, if only of their own. */
    public boolean sees(String resource, String field) {
        return !right(resource, field).isNothing();
    }

    /** Whether the asker sees a field of every record of a kind as it is. */
    public boolean seesExactly(String resource, String field) {
        return right(resource, field).exact() == Right.Exact.ALWAYS;
    }

    /** Whether the asker sees of a kind of record only those of their own organisation. */
    public boolean seesOwnOnly(String resource) {
        return table.showsOwnOnly(resource, viewers.current().roles());
    }

    /** @throws NotFoundException if the asker sees only records of their own organisation and this is none of them */
    public void requireSeen(String resource, UUID id) {
        if (seesOwnOnly(resource) && !isOwn(resource, id)) {
            throw new NotFoundException(words(resource), id);
        }
    }

    private static String words(String resource) {
        return resource.substring(resource.lastIndexOf('.') + 1).replace('-', ' ');
    }

    /** Notes that what is asked for is, or hangs on, a record that the asker may see. */
    void asksAbout(String resource, UUID id) {
        known.askAbout(new SightTable.HeldPath(resource, id.toString()));
    }

    /**
     * What {@link OwnRecords} asks of an address of the API, for a page that shows or changes what stands under it.
     *
     * @throws NotFoundException if the asker does not see the record that it names
     */
    public void requireSeenAt(String path) {
        table.findHeldPath(path).ifPresent(held -> {
            UUID id = UUID.fromString(held.id());
            requireSeen(held.resource(), id);
            asksAbout(held.resource(), id);
        });
    }

    /** Of some records under an address of the API those that the asker may see, in the order in which they are given. */
    public List<UUID> onlySeenAt(String base, List<UUID> ids) {
        return table.findHeldPath(base + "/")
                .map(held -> onlySeen(held.resource(), ids))
                .orElse(ids);
    }

    /** The record that the address of the request names, if it names one that is somebody's own. */
    SightTable.@Nullable HeldPath askedAbout() {
        return known.askedAbout();
    }

    /** Whether a record is one of the asker's organisation. */
    public boolean isOwn(String resource, UUID id) {
        Map<UUID, Boolean> told = known.own(resource);
        if (!told.containsKey(id)) {
            lookUpOwn(resource, List.of(id));
        }
        return Boolean.TRUE.equals(told.get(id));
    }

    /** Of some records those that the asker may see, in the order in which they are given. */
    public List<UUID> onlySeen(String resource, List<UUID> ids) {
        if (!seesOwnOnly(resource)) {
            return ids;
        }
        lookUpOwn(resource, ids);
        return ids.stream().filter(id -> isOwn(resource, id)).toList();
    }

    /** Looks up at once what will be asked of each of some records. */
    void lookUp(String resource, Collection<UUID> ids) {
        if (seesOwnOnly(resource)) {
            lookUpOwn(resource, ids);
        }
        if (table.generalisesAny(resource, viewers.current().roles())) {
            lookUpStrictness(resource, ids);
        }
    }

    /** Learns in one question which of some records are the asker's own. */
    void lookUpOwn(String resource, Collection<UUID> ids) {
        UUID organisation = viewers.current().organisationId();
        Map<UUID, Boolean> told = known.own(resource);
        ids.forEach(id -> told.putIfAbsent(id, false));
        String view = table.findHeld(resource).map(SightTable.Held::holders).orElse(null);
        if (organisation == null || view == null || ids.isEmpty()) {
            return;
        }
        ask(
                "select distinct id from " + view + " where id = any(?) and organisation_id = ?",
                ids,
                organisation,
                rows -> told.put(rows.getObject(1, UUID.class), true));
    }

    /**
     * How strictly the place of a record is kept: 0 for one that is not sensitive, the grid in degrees, or {@link
     * #WITHHELD}. What nobody knows of counts as withheld.
     */
    public double strictness(String resource, UUID id) {
        Map<UUID, Double> told = known.strictness(resource);
        if (!told.containsKey(id)) {
            lookUpStrictness(resource, List.of(id));
        }
        return told.getOrDefault(id, WITHHELD);
    }

    void lookUpStrictness(String resource, Collection<UUID> ids) {
        String view = table.findHeld(resource).map(SightTable.Held::sensitivity).orElse(null);
        if (view == null || ids.isEmpty()) {
            return;
        }
        Map<UUID, Double> told = known.strictness(resource);
        ask(
                "select id, max(strictness) from " + view + " where id = any(?) group by id",
                ids,
                null,
                rows -> told.put(rows.getObject(1, UUID.class), rows.getDouble(2)));
    }

    /**
     * One page of the asker's own records by identifier, newest first, for lists that show no others.
     *
     * @param before only those older than this, or null
     * @param further a further condition on {@code h.id}, of the room's own
     */
    public List<UUID> listOwn(String resource, @Nullable UUID before, int limit, @Nullable String further) {
        UUID organisation = viewers.current().organisationId();
        String view = table.findHeld(resource).map(SightTable.Held::holders).orElse(null);
        if (organisation == null || view == null) {
            return List.of();
        }
        List<UUID> ids = new ArrayList<>();
        String sql = "select distinct h.id from " + view + " h where h.organisation_id = ?"
                + (before == null ? "" : " and h.id < ?")
                + (further == null ? "" : " and " + further)
                + " order by h.id desc limit ?";
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(sql)) {
            int next = 1;
            query.setObject(next++, organisation);
            if (before != null) {
                query.setObject(next++, before);
            }
            query.setInt(next, limit);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    ids.add(rows.getObject(1, UUID.class));
                }
            }
        } catch (SQLException e) {
            throw new PersistenceException("it cannot be read whose records they are", e);
        }
        return ids;
    }

    private interface Row {
        void take(ResultSet rows) throws SQLException;
    }

    private void ask(String sql, Collection<UUID> ids, @Nullable UUID organisation, Row row) {
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(sql)) {
            query.setArray(1, connection.createArrayOf("uuid", ids.toArray()));
            if (organisation != null) {
                query.setObject(2, organisation);
            }
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    row.take(rows);
                }
            }
        } catch (SQLException e) {
            throw new PersistenceException("it cannot be read whose records they are", e);
        }
    }
}
