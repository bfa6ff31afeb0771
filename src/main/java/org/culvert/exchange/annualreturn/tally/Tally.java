package org.culvert.exchange.annualreturn.tally;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The sums of a return over a span of time, closed at its start and open at its end.
 *
 * <p>What meets is one: a holder who has it in two spans that touch has it all along. Whatever is held before the span begins
 * and has not gone before that instant is in the opening, also where it goes at that instant; so the closing of one span is the
 * opening of the next.
 *
 * @param lines by kind of animal and kind, in order
 * @param movements in order of time
 * @param doubts what cannot be told
 */
public record Tally(List<Line> lines, List<Movement> movements, List<Doubt> doubts) {
    public static final String TRANSFERRED = "transferred";
    public static final String GAP = "custodyGap";
    public static final String UNKNOWN = "unknown";
    public static final String HELD_BY_NOBODY = "heldByNobody";

    /** Lines with nothing in them are left out. */
    public static Tally of(Instant from, Instant before, Collection<Counted> all) {
        if (!from.isBefore(before)) {
            throw new IllegalArgumentException("the span ends before it begins");
        }
        SortedMap<String, Sums> sums = new TreeMap<>();
        List<Movement> movements = new ArrayList<>();
        for (Counted one : all) {
            Sums of = sums.computeIfAbsent(one.taxon() + " " + one.kind(), key -> new Sums(one.taxon(), one.kind()));
            List<Stay> stays = one.stays();
            if (stays.isEmpty()) {
                Instant ended = one.endedAt();
                if (ended != null && !ended.isBefore(from) && ended.isBefore(before)) {
                    of.doubt(false, HELD_BY_NOBODY, one);
                }
                continue;
            }
            for (int first = 0; first < stays.size(); first++) {
                if (!stays.get(first).own()) {
                    continue;
                }
                int last = first;
                while (last + 1 < stays.size() && stays.get(last + 1).own() && meet(stays, last)) {
                    last++;
                }
                Instant begins = stays.get(first).from();
                Instant ends = stays.get(last).to();
                if (begins.isBefore(from) && (ends == null || !ends.isBefore(from))) {
                    of.opening += one.count();
                }
                if (begins.isBefore(before) && (ends == null || !ends.isBefore(before))) {
                    of.closing += one.count();
                }
                if (!begins.isBefore(from) && begins.isBefore(before)) {
                    movements.add(of.take(in(one, first)));
                }
                if (ends != null && !ends.isBefore(from) && ends.isBefore(before)) {
                    movements.add(of.take(out(one, last, ends)));
                }
                first = last;
            }
        }
        movements.sort(Comparator.comparing(Movement::at)
                .thenComparing(movement -> movement.what().caseNumber())
                .thenComparing(movement -> movement.what().kind())
                .thenComparing(Movement::in)
                .thenComparing(movement -> movement.what().count()));
        return new Tally(
                sums.values().stream()
                        .map(Sums::line)
                        .filter(line -> line.opening() + line.cameIn() > 0)
                        .toList(),
                List.copyOf(movements),
                sums.values().stream().flatMap(of -> of.doubts().stream()).toList());
    }

    /** Whether a stay ends when the one after it begins. */
    private static boolean meet(List<Stay> stays, int before) {
        return stays.get(before + 1).from().equals(stays.get(before).to());
    }

    private static Movement in(Counted one, int first) {
        Stay stay = one.stays().get(first);
        if (first == 0) {
            return new Movement(one, true, stay.from(), one.came(), null);
        }
        return meet(one.stays(), first - 1)
                ? new Movement(one, true, stay.from(), TRANSFERRED, one.stays().get(first - 1))
                : new Movement(one, true, stay.from(), GAP, null);
    }

    private static Movement out(Counted one, int last, Instant ends) {
        if (last + 1 < one.stays().size()) {
            return meet(one.stays(), last)
                    ? new Movement(one, false, ends, TRANSFERRED, one.stays().get(last + 1))
                    : new Movement(one, false, ends, GAP, null);
        }
        return ends.equals(one.endedAt())
                ? new Movement(one, false, ends, Objects.requireNonNull(one.end()), null)
                : new Movement(one, false, ends, GAP, null);
    }

    private static final class Sums {
        private final String taxon;
        private final CountedAs kind;
        private final SortedMap<String, Integer> came = new TreeMap<>();
        private final SortedMap<String, Integer> went = new TreeMap<>();
        private final SortedMap<String, Doubtful> doubtful = new TreeMap<>();
        private int opening;
        private int closing;

        Sums(String taxon, CountedAs kind) {
            this.taxon = taxon;
            this.kind = kind;
        }

        Movement take(Movement movement) {
            (movement.in() ? came : went).merge(movement.how(), movement.what().count(), Integer::sum);
            if (movement.how().equals(GAP) || !movement.in() && movement.how().equals(UNKNOWN)) {
                doubt(movement.in(), movement.how(), movement.what());
            }
            return movement;
        }

        void doubt(boolean in, String why, Counted what) {
            Doubtful of = doubtful.computeIfAbsent((in ? "in " : "out ") + why, key -> new Doubtful(in, why));
            of.count += what.count();
            of.cases.add(what.caseNumber());
        }

        Line line() {
            return new Line(taxon, kind, opening, came, went, closing);
        }

        List<Doubt> doubts() {
            return doubtful.values().stream()
                    .map(of -> new Doubt(taxon, kind, of.in, of.why, of.count, List.copyOf(of.cases)))
                    .toList();
        }
    }

    private static final class Doubtful {
        private final boolean in;
        private final String why;
        private final TreeSet<Long> cases = new TreeSet<>();
        private int count;

        Doubtful(boolean in, String why) {
            this.in = in;
            this.why = why;
        }
    }
}
