package org.culvert.platform.ledger;

import java.util.Map;
import java.util.Optional;

/** One kind of record that has an entity tag; a room has a bean of this type for each that it lets be changed. */
public interface TagSource {
    /** What {@link NeedsTag} calls it. */
    String kind();

    /** Tables of what belongs to it, with the column that names it; its own table has the column {@code id}. */
    default Map<String, String> columnByTable() {
        return Map.of();
    }

    /** Locks the row that the whole record hangs on until the transaction ends; a row that is not there is not locked. */
    void lock(String id);

    /**
     * The record, exactly as its read shows it.
     *
     * @return empty only where a record that does not exist yet is made by the same operation
     * @throws org.culvert.platform.NotFoundException when there is none, or none that the asker may see
     */
    Optional<Object> show(String id);
}
