package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import org.culvert.platform.StaleException;
import org.jspecify.annotations.Nullable;

/** Lets a form change a record only as its page showed it: what {@link NeedsTag} is for the API. */
@ApplicationScoped
public class SeenRecords {
    private final Instance<TagSource> sources;
    private final Tags tags;

    SeenRecords(Instance<TagSource> sources, Tags tags) {
        this.sources = sources;
        this.tags = tags;
    }

    /**
     * What a form carries of the record as it stands; empty where there is none yet.
     *
     * @param kind as {@link NeedsTag} names it
     */
    public String tag(String kind, String id) {
        return source(kind).show(id).map(tags::of).orElse("");
    }

    /**
     * Locks the record until the transaction ends.
     *
     * @param seen as the form carries it
     * @throws StaleException when it is no longer the record that the page showed
     */
    public void requireUnchanged(String kind, String id, @Nullable String seen) {
        source(kind).lock(id);
        if (!tag(kind, id).equals(seen)) {
            throw new StaleException("Somebody changed it in between. It stands here as it is now.");
        }
    }

    private TagSource source(String kind) {
        return sources.stream()
                .filter(source -> source.kind().equals(kind))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no room tells the tag of a " + kind));
    }
}
