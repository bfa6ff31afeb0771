package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import java.util.function.IntConsumer;
import org.culvert.hotspot.stats.Parallel;

/**
 * For each place, the places around it, the nearest first: the balls that a scan looks at, each the inner part of a list.
 *
 * @param first where the list of each place begins; one more at the end
 * @param place the places of the lists, each list beginning with the place itself
 * @param metres their distances, ascending in each list; equal ones always come into a ball together
 */
record Balls(int[] first, int[] place, double[] metres) {
    private static final int INDEX_BITS = 24;
    private static final double MOST_TICKS = 1L << 38;

    /**
     * @param events the cases
     * @param firstOfPlace first case of each place, by rank; one more at the end
     * @param placeOf the place of each case
     * @param farthest greatest radius
     * @param mostCases a ball holds no more
     */
    static Balls alongRoads(
            PlacedEvents events, int[] firstOfPlace, int[] placeOf, double farthest, int mostCases, int threads) {
        int places = firstOfPlace.length - 1;
        int[][] around = new int[places][];
        double[][] away = new double[places][];
        Parallel.forEach(places, threads, () -> {
            var reach = new Reach(events);
            return (IntConsumer) centre -> {
                int rank = firstOfPlace[centre];
                reach.search(events.link(rank), events.metres(rank), farthest);
                double outermost = 1;
                for (int i = 0; i < reach.count(); i++) {
                    outermost = Math.max(outermost, reach.metres(i));
                }
                double ticks = Math.min(1 / Reach.MICROMETRE, MOST_TICKS / outermost);
                long[] keys = new long[reach.count()];
                int count = 0;
                for (int i = 0; i < reach.count(); i++) {
                    int other = placeOf[reach.event(i)];
                    if (reach.event(i) == firstOfPlace[other]) {
                        keys[count++] = Math.round(reach.metres(i) * ticks) << INDEX_BITS | i;
                    }
                }
                Arrays.sort(keys, 0, count);
                int[] place = new int[count];
                double[] metres = new double[count];
                int mask = (1 << INDEX_BITS) - 1;
                for (int i = 0; i < count; i++) {
                    int found = (int) (keys[i] & mask);
                    place[i] = placeOf[reach.event(found)];
                    metres[i] = i > 0 ? Math.max(metres[i - 1], reach.metres(found)) : reach.metres(found);
                }
                int whole = withNoMore(place, metres, count, firstOfPlace, mostCases);
                around[centre] = Arrays.copyOf(place, whole);
                away[centre] = Arrays.copyOf(metres, whole);
            };
        });
        int[] first = new int[places + 1];
        for (int centre = 0; centre < places; centre++) {
            first[centre + 1] = Math.addExact(first[centre], around[centre].length);
        }
        int[] place = new int[first[places]];
        double[] metres = new double[first[places]];
        for (int centre = 0; centre < places; centre++) {
            System.arraycopy(around[centre], 0, place, first[centre], around[centre].length);
            System.arraycopy(away[centre], 0, metres, first[centre], away[centre].length);
        }
        return new Balls(first, place, metres);
    }

    /** How many of a list can stay so that no ball holds more cases than so many. */
    private static int withNoMore(int[] place, double[] metres, int count, int[] firstOfPlace, int mostCases) {
        int cases = 0;
        int whole = 0;
        for (int i = 0; i < count; i++) {
            cases += firstOfPlace[place[i] + 1] - firstOfPlace[place[i]];
            if (cases > mostCases) {
                break;
            }
            if (i + 1 == count || metres[i + 1] - metres[i] > Reach.MICROMETRE) {
                whole = i + 1;
            }
        }
        return whole;
    }

    int count() {
        return first.length - 1;
    }

    /** Whether a ball may end after an entry of a list: the next is farther away, or there is none. */
    boolean endsAt(int index, int endOfList) {
        return index + 1 == endOfList || metres[index + 1] - metres[index] > Reach.MICROMETRE;
    }
}
