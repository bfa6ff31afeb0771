package org.culvert.platform.ledger;

import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.platform.Paging;

/** The tag of a record that hangs on one row of a table. */
public final class RowTag implements TagSource {
    private final String kind;
    private final String table;
    private final EntityManager entities;
    private final Function<UUID, Object> shown;
    private final Map<String, String> parts;

    /**
     * @param table name of the table, a constant
     * @param shown the record as its read shows it, by the identifier of its row
     * @param parts tables of what belongs to it, with the column that names it
     */
    public RowTag(
            String kind,
            String table,
            EntityManager entities,
            Function<UUID, Object> shown,
            Map<String, String> parts) {
        this.kind = kind;
        this.table = table;
        this.entities = entities;
        this.shown = shown;
        this.parts = new HashMap<>(parts);
        this.parts.put(table, "id");
    }

    public RowTag(String kind, String table, EntityManager entities, Function<UUID, Object> shown) {
        this(kind, table, entities, shown, Map.of());
    }

    @Override
    public Map<String, String> columnByTable() {
        return parts;
    }

    @Override
    public String kind() {
        return kind;
    }

    @Override
    public void lock(String id) {
        entities.createNativeQuery("select id from " + table + " where id = ?1 for update")
                .setParameter(1, Paging.uuid("id", id))
                .getResultList();
    }

    @Override
    public Optional<Object> show(String id) {
        return Optional.of(shown.apply(Paging.uuid("id", id)));
    }
}
