package org.culvert.hotspot.beside;

import java.util.List;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.pattern.Persistence;

/** How far stretches lie on the same road. */
final class Overlap {
    private Overlap() {}

    static Persistence.Stretch stretch(Hotspot hotspot) {
        return new Persistence.Stretch(hotspot.spans().stream()
                .map(span -> new Persistence.Interval(span.link(), span.fromMetres(), span.toMetres()))
                .toList());
    }

    /** Whether at least half of the shorter of two stretches lies on the other. */
    static boolean isSame(Hotspot one, Hotspot other) {
        double shorter = Math.min(metres(one), metres(other));
        return shorter > 0 && sharedMetres(one, other) >= shorter / 2;
    }

    static boolean isAmong(Hotspot one, List<Hotspot> others) {
        return others.stream().anyMatch(other -> isSame(one, other));
    }

    private static double sharedMetres(Hotspot one, Hotspot other) {
        double shared = 0;
        for (Hotspot.Span a : one.spans()) {
            for (Hotspot.Span b : other.spans()) {
                if (a.link() == b.link()) {
                    shared += Math.max(
                            0, Math.min(a.toMetres(), b.toMetres()) - Math.max(a.fromMetres(), b.fromMetres()));
                }
            }
        }
        return shared;
    }

    private static double metres(Hotspot hotspot) {
        return hotspot.spans().stream()
                .mapToDouble(span -> span.toMetres() - span.fromMetres())
                .sum();
    }
}
