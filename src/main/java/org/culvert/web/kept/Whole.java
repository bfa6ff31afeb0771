package org.culvert.web.kept;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/**
 * Something with a page of its own, of which records are kept.
 *
 * @param name as the API has it in its addresses
 * @param tag its kind, as the API tells whether it has changed
 * @param page address of its page, with {@code {id}}
 * @param reader reads it as the API does
 * @param named by the fields that refer to records of it, what these are
 */
record Whole(
        String name,
        String tag,
        String page,
        Function<UUID, Object> reader,
        List<KeptKind> kinds,
        Map<String, Function<UUID, Offered>> named) {
    Whole(String name, String tag, String page, Function<UUID, Object> reader, List<KeptKind> kinds) {
        this(name, tag, page, reader, kinds, Map.of());
    }

    /** The same, with records that its fields refer to. */
    Whole naming(Map<String, Function<UUID, Offered>> records) {
        return new Whole(name, tag, page, reader, kinds, records);
    }

    String reads() {
        return "GET /api/" + name + "/{id}";
    }

    String pageOf(UUID id) {
        return page.replace("{id}", id.toString());
    }

    Optional<KeptKind> findKind(String kind) {
        return kinds.stream().filter(one -> one.name().equals(kind)).findFirst();
    }
}
