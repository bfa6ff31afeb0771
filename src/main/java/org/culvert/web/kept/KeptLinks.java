package org.culvert.web.kept;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.web.acts.Act;

/** Ways from other pages to what is kept of what they show. */
@ApplicationScoped
public class KeptLinks {
    private final Wholes wholes;

    KeptLinks(Wholes wholes) {
        this.wholes = wholes;
    }

    /** From a page of something that whoever asks sees. */
    public KeptWays waysOf(String name, UUID id) {
        Whole whole = wholes.find(name).orElseThrow();
        if (!wholes.isReadable(whole)) {
            return KeptWays.NONE;
        }
        Map<String, List<Act<?>>> acts = new HashMap<>();
        for (KeptKind kind : wholes.kinds(whole)) {
            List<Act<?>> usable = new ArrayList<>();
            wholes.usable(kind).forEach(deed -> usable.add(deed.act()));
            acts.put(kind.name(), usable);
        }
        return new KeptWays("/kept/" + name + "/" + id, acts);
    }

    /** Whether records are kept of what goes by this name in the addresses of the API. */
    public boolean isKept(String name) {
        return wholes.find(name).isPresent();
    }
}
