package org.culvert.hotspot.beside;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.RecordDoubts;
import org.culvert.hotspot.stats.RoadEvent;

/** A collision on the network and the day on which it counts. */
public record DatedEvent(LocalDate day, RoadEvent event) {
    /** An order that does not hang on the order in which they were read. */
    static final Comparator<DatedEvent> ALONG_THE_LINKS = Comparator.<DatedEvent>comparingInt(
                    dated -> dated.event().link())
            .thenComparingDouble(dated -> dated.event().metres())
            .thenComparing(DatedEvent::day)
            .thenComparingDouble(dated -> dated.event().recording().spreadMetres())
            .thenComparingDouble(dated -> dated.event().recording().roundingMetres());

    public static List<RoadEvent> events(List<DatedEvent> dated) {
        return dated.stream().map(DatedEvent::event).toList();
    }

    /** Those of some days, both included. */
    public static List<DatedEvent> within(List<DatedEvent> dated, LocalDate first, LocalDate last) {
        return dated.stream()
                .filter(one -> !one.day().isBefore(first) && !one.day().isAfter(last))
                .toList();
    }

    /** What the records say against what a run assumes of them. */
    public static RecordDoubts doubts(Chainage chainage, List<DatedEvent> dated) {
        return RecordDoubts.of(
                chainage,
                events(dated),
                dated.stream().mapToLong(one -> one.day().toEpochDay()).toArray());
    }

    static List<DatedEvent> inOrder(List<DatedEvent> dated) {
        return dated.stream().sorted(ALONG_THE_LINKS).toList();
    }
}
