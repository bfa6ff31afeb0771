package org.culvert.web.kept;

import io.quarkus.arc.Arc;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.culvert.web.acts.Act;

/** Operations of the API behind what is kept. */
public final class KeptOperations {
    private KeptOperations() {}

    private static Stream<KeptKind> kinds() {
        return Arc.container().instance(Wholes.class).get().all().stream().flatMap(whole -> whole.kinds().stream());
    }

    /** Those that show records. */
    public static List<String> reads() {
        return kinds().map(KeptKind::reads).distinct().toList();
    }

    /** What may be done with them. */
    public static List<Act<?>> acts() {
        List<Act<?>> acts = new ArrayList<>();
        kinds().forEach(kind -> kind.deeds().forEach(deed -> acts.add(deed.act())));
        return acts;
    }
}
