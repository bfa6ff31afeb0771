package org.culvert.exchange.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.culvert.call.Nearness;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * Finds reports that may tell of one animal, as {@link Nearness} has it, among many in the order of their times: rows of a file with
 * one another, and with what is in the register. In memory are those of the last 36 hours alone. Cells of place go on across the
 * meridian of 180 degrees.
 */
final class SameAnimals {
    /**
     * A report.
     *
     * @param number of a row, or of an incident of the register
     * @param at when it was reported, in seconds since 1970
     * @param kinds of animals that it tells of; none where it does not say
     */
    record Seen(
            boolean inRegister,
            long number,
            long at,
            double latitude,
            double longitude,
            double uncertaintyMetres,
            int[] kinds) {}

    /**
     * A row and a report before it that may be of the same animal.
     *
     * @param other row of the file that tells of the animal first, or number of the incident of the register
     */
    record Likely(long number, boolean inRegister, long other, double metresApart, double hoursApart) {}

    private record First(long number, long at) {}

    private static final double CELL_DEGREES = 0.025;
    private static final int ROUND = 14_400;
    private static final double METRES_OF_A_DEGREE = 111_320;

    /** Fewer of a degree of latitude there are nowhere: 110,574 m at the equator on WGS 84 (from memory). */
    private static final double FEWEST_METRES_OF_A_DEGREE = 110_500;

    /** Whose places are less sure than that are looked through one by one. */
    private static final double LARGE_METRES = 1000;

    private static final int TIDY_EVERY = 20_000;

    /** Reports by the cell of their place, those of unsure places apart; each list in the order of time. */
    private static final class Window {
        private final Map<Long, List<Seen>> byCell = new HashMap<>();
        private final List<Seen> large = new ArrayList<>();

        void add(Seen seen) {
            if (seen.uncertaintyMetres > LARGE_METRES) {
                large.add(seen);
            } else {
                byCell.computeIfAbsent(cell(row(seen.latitude), row(seen.longitude)), none -> new ArrayList<>(2))
                        .add(seen);
            }
        }

        /** Lists in which reports near another one stand. */
        List<List<Seen>> near(Seen seen) {
            List<List<Seen>> lists = new ArrayList<>();
            if (seen.uncertaintyMetres > LARGE_METRES) {
                lists.addAll(byCell.values());
            } else {
                double reach = Nearness.reachMetres(seen.uncertaintyMetres, LARGE_METRES);
                double north = reach / FEWEST_METRES_OF_A_DEGREE;
                double east = Math.min(
                        360, reach / (METRES_OF_A_DEGREE * Math.max(0.01, Math.cos(Math.toRadians(seen.latitude)))));
                int west = row(seen.longitude - east);
                // Where so many are near that they go round the earth, each is looked through once
                int columns = Math.min(ROUND, row(seen.longitude + east) - west + 1);
                for (int y = row(seen.latitude - north); y <= row(seen.latitude + north); y++) {
                    for (int x = west; x < west + columns; x++) {
                        List<Seen> there = byCell.get(cell(y, x));
                        if (there != null) {
                            lists.add(there);
                        }
                    }
                }
            }
            lists.add(large);
            return lists;
        }

        void forgetBefore(long at) {
            for (Iterator<List<Seen>> lists = byCell.values().iterator(); lists.hasNext(); ) {
                List<Seen> list = lists.next();
                list.removeIf(seen -> seen.at < at);
                if (list.isEmpty()) {
                    lists.remove();
                }
            }
            large.removeIf(seen -> seen.at < at);
        }

        private static int row(double degrees) {
            return (int) Math.floor(degrees / CELL_DEGREES);
        }

        /** Of columns as many as go round the earth; the one that begins at 180 degrees east is that at 180 degrees west. */
        private static long cell(int y, int x) {
            return ((long) y << 32) | Math.floorMod(x, ROUND);
        }
    }

    private final Consumer<Likely> found;
    private final Window rows = new Window();
    private final Window register = new Window();

    /** Rows that were not found in the register yet. */
    private final Window notFound = new Window();

    /** The row that tells of an animal first, by each that came after it. */
    private final Map<Long, First> firsts = new HashMap<>();

    private int sinceTidied;

    SameAnimals(Consumer<Likely> found) {
        this.found = found;
    }

    /** Takes the next report; none is earlier than the one before it. */
    void take(Seen seen) {
        if (++sinceTidied >= TIDY_EVERY) {
            sinceTidied = 0;
            long before = seen.at - Nearness.WINDOW.toSeconds();
            rows.forgetBefore(before);
            register.forgetBefore(before);
            notFound.forgetBefore(before);
            firsts.values().removeIf(first -> first.at < before);
        }
        if (seen.inRegister) {
            tellRowsOf(seen);
            register.add(seen);
        } else {
            Seen known = first(register, seen);
            if (known != null) {
                found.accept(likely(seen, known, known.number));
            } else {
                notFound.add(seen);
            }
            Seen before = first(rows, seen);
            if (before != null) {
                First earlier = firsts.get(before.number);
                long first = earlier == null ? before.number : earlier.number;
                firsts.put(seen.number, new First(first, seen.at));
                found.accept(likely(seen, before, first));
            }
            rows.add(seen);
        }
    }

    private void tellRowsOf(Seen incident) {
        for (List<Seen> list : notFound.near(incident)) {
            list.removeIf(row -> {
                boolean alike = alike(row, incident);
                if (alike) {
                    found.accept(likely(row, incident, incident.number));
                }
                return alike;
            });
        }
    }

    private static @Nullable Seen first(Window window, Seen seen) {
        for (List<Seen> list : window.near(seen)) {
            for (Seen other : list) {
                if (alike(other, seen)) {
                    return other;
                }
            }
        }
        return null;
    }

    private static Likely likely(Seen row, Seen other, long number) {
        return new Likely(
                row.number, other.inRegister, number, metres(row, other), Math.abs(row.at - other.at) / 3600.0);
    }

    private static boolean alike(Seen one, Seen other) {
        double reach = Nearness.reachMetres(one.uncertaintyMetres, other.uncertaintyMetres);
        return Math.abs(one.at - other.at) <= Nearness.WINDOW.toSeconds()
                && Math.abs(one.latitude - other.latitude) * FEWEST_METRES_OF_A_DEGREE <= reach
                && ofOneKind(one.kinds, other.kinds)
                && metres(one, other) <= reach;
    }

    private static double metres(Seen one, Seen other) {
        return Geodesy.metresBetween(
                new Position(one.latitude, one.longitude), new Position(other.latitude, other.longitude));
    }

    private static boolean ofOneKind(int[] one, int[] other) {
        if (one.length == 0 || other.length == 0) {
            return true;
        }
        for (int kind : one) {
            for (int another : other) {
                if (kind == another) {
                    return true;
                }
            }
        }
        return false;
    }
}
