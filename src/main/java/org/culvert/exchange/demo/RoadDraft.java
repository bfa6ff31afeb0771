package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A road while it is being drawn; {@code over} says that it bridges some of the roads it crosses. */
final class RoadDraft {
    private final String name;
    private final RoadClass kind;
    private final @Nullable String carriageway;
    private final boolean over;
    private final List<Spot> spots;
    private final List<Bridge> bridges = new ArrayList<>();

    /** A bridge between two vertices of the road. */
    record Bridge(Spot from, Spot to) {}

    RoadDraft(String name, RoadClass kind, @Nullable String carriageway, boolean over, List<Spot> spots) {
        this.name = name;
        this.kind = kind;
        this.carriageway = carriageway;
        this.over = over;
        this.spots = new ArrayList<>(spots);
    }

    String name() {
        return name;
    }

    RoadClass kind() {
        return kind;
    }

    @Nullable
    String carriageway() {
        return carriageway;
    }

    boolean over() {
        return over;
    }

    List<Spot> spots() {
        return spots;
    }

    List<Bridge> bridges() {
        return bridges;
    }
}
