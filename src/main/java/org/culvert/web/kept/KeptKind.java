package org.culvert.web.kept;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.platform.FormBodies;
import org.culvert.platform.Page;
import org.culvert.platform.Paging;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.WordKeys;
import org.culvert.web.forms.EntryBody;
import org.jspecify.annotations.Nullable;

/** Records of one kind within something that has a page of its own, and what may be done with each. */
final class KeptKind {
    /**
     * Where a record stands.
     *
     * @param whole what the page is about: a case, an incident
     * @param in the record of the whole in which it stands, or itself where it stands alone
     * @param id its own; that of what it stands in where it has none
     */
    record Ids(UUID whole, UUID in, UUID id) {}

    /** A record, as whoever asks sees it. */
    record Kept(Ids ids, JsonNode told) {}

    /** Carries something out. */
    interface Doing<E> {
        void carryOut(Ids ids, E entry);
    }

    /** What may be done, and how. */
    record Deed<E>(Act<E> act, Doing<E> doing) {
        void carryOut(Ids ids, EntryBody told, FormBodies bodies) {
            doing.carryOut(ids, told.read(bodies, act.body()));
        }
    }

    /** Some of a kind. @param next of which the next ones come, null where these are the last */
    record Listed(List<Kept> items, @Nullable UUID next) {}

    /** Reads what of a whole the API shows, newest first, some at a time. */
    interface Paged {
        Page<?> read(UUID whole, int most, @Nullable UUID before);
    }

    /** As many of a kind as stand on a page. */
    static final int MOST = 100;

    private final String name;
    private final String reads;
    private final Paged roots;
    private final String[] part;
    private final List<Deed<?>> deeds = new ArrayList<>();

    private KeptKind(String name, String reads, Paged roots, String[] part) {
        this.name = name;
        this.reads = reads;
        this.roots = roots;
        this.part = part;
    }

    /**
     * @param reads the operation of the API that shows them
     * @param roots what of a whole the API shows
     * @param part the fields that lead from there to the records; none where those are the records
     */
    static KeptKind of(String name, String reads, Function<UUID, ? extends List<?>> roots, String... part) {
        return new KeptKind(name, reads, (whole, most, before) -> new Page<>(roots.apply(whole), null), part);
    }

    /** Those of which a whole may have more than stand on a page. */
    static KeptKind paged(String name, String reads, Paged roots) {
        return new KeptKind(name, reads, roots, new String[0]);
    }

    /** @param tag as {@link Act} has it; empty where nothing is changed */
    <E> KeptKind act(String act, String operation, String tag, Class<E> body, Doing<E> doing, String... leftOut) {
        deeds.add(
                new Deed<>(new Act<>(act, operation, tag.isEmpty() ? null : tag, true, body, Set.of(leftOut)), doing));
        return this;
    }

    <E> KeptKind corrected(String operation, String tag, Class<E> body, Doing<E> doing, String... leftOut) {
        return act("correction", "PATCH " + operation, tag, body, doing, leftOut);
    }

    KeptKind withdrawn(String operation, String tag, Doing<Why> doing) {
        return act("withdrawal", "POST " + operation, tag, Why.class, doing);
    }

    String name() {
        return name;
    }

    /** Its name in words of Java, by which message bundles know it. */
    String key() {
        return WordKeys.of(name);
    }

    String reads() {
        return reads;
    }

    List<Deed<?>> deeds() {
        return deeds;
    }

    Optional<Deed<?>> findDeed(String act) {
        return deeds.stream().filter(deed -> deed.act().name().equals(act)).findFirst();
    }

    /** Those of a whole, in the order in which the API has them. */
    Listed of(UUID whole, @Nullable UUID before, ObjectMapper mapper) {
        Page<?> page = roots.read(whole, MOST, before);
        List<Kept> found = new ArrayList<>();
        for (Object root : page.items()) {
            JsonNode told = mapper.valueToTree(root);
            UUID in = id(told, whole);
            collect(told, 0, new Ids(whole, in, in), found);
        }
        return new Listed(found, Paging.cursor(page.next()));
    }

    private void collect(JsonNode node, int depth, Ids ids, List<Kept> found) {
        if (node.isArray()) {
            node.forEach(element -> collect(element, depth, ids, found));
        } else if (depth < part.length) {
            collect(node.path(part[depth]), depth + 1, ids, found);
        } else if (node.isObject()) {
            found.add(new Kept(new Ids(ids.whole(), ids.in(), id(node, ids.in())), node));
        }
    }

    private static UUID id(JsonNode node, UUID otherwise) {
        return node.hasNonNull("id") ? UUID.fromString(node.get("id").asText()) : otherwise;
    }

    /** The first part of the address of the API under which its root stands. */
    static @Nullable String base(String operation) {
        String path = operation.substring(operation.indexOf(' ') + 1);
        int id = path.indexOf("/{");
        return id < 0 ? null : path.substring(0, id);
    }
}
