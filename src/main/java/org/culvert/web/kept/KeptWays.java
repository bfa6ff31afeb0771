package org.culvert.web.kept;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.web.acts.Act;

/** Ways from records that a page shows straight to the forms that put them right, as far as whoever asks may. */
public final class KeptWays {
    /** @param key name of the words of what is done */
    public record Way(String href, String key) {}

    static final KeptWays NONE = new KeptWays("", Map.of());

    private final String page;
    private final Map<String, List<Act<?>>> acts;

    /**
     * @param page with all that is kept
     * @param acts by the kind of records to which they are done
     */
    KeptWays(String page, Map<String, List<Act<?>>> acts) {
        this.page = page;
        this.acts = acts;
    }

    /** To what changes a record. */
    public List<Way> of(String kind, UUID id) {
        return ways(kind, id, told(kind).filter(act -> act.tag() != null));
    }

    /** To what changes a record, or adds to it. */
    public List<Way> all(String kind, UUID id) {
        return ways(kind, id, told(kind));
    }

    private Stream<Act<?>> told(String kind) {
        return acts.getOrDefault(kind, List.of()).stream();
    }

    private List<Way> ways(String kind, UUID id, Stream<Act<?>> some) {
        return some.map(act -> new Way(page + "/" + kind + "/" + act.name() + "?of=" + id, act.key()))
                .toList();
    }
}
