package org.culvert.exchange.reading;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Coordinates that stand in more than one row, in a table of keys of 64 bits: two million positions take some 50 MB, and of more
 * only those that are known already are counted on.
 */
final class Pins {
    private static final int MOST = 2_000_000;
    private static final int MOST_SHOWN = 500;
    private static final int LEAST_SHOWN = 3;

    private long[] keys = new long[1 << 12];
    private int[] counts = new int[keys.length];
    private int[] roads = new int[keys.length];
    private boolean[] onOthers = new boolean[keys.length];
    private int size;
    private boolean full;
    private long rows;
    private long tied;
    private final Map<Long, String> shown = new LinkedHashMap<>();

    void take(String position, @Nullable String road) {
        rows++;
        long key = hash(position);
        int at = find(key);
        if (counts[at] == 0) {
            if (size >= MOST) {
                full = true;
                return;
            }
            keys[at] = key;
            roads[at] = road == null ? 0 : road.hashCode();
            counts[at] = 1;
            size++;
            if (size * 2 > keys.length) {
                grow();
            }
            return;
        }
        counts[at]++;
        tied += counts[at] == 2 ? 2 : 1;
        if (road != null) {
            if (roads[at] == 0) {
                roads[at] = road.hashCode();
            } else if (roads[at] != road.hashCode()) {
                onOthers[at] = true;
            }
        }
        if ((counts[at] >= LEAST_SHOWN || onOthers[at]) && shown.size() < MOST_SHOWN) {
            shown.put(key, position);
        }
    }

    /** Rows with coordinates. */
    long rows() {
        return rows;
    }

    /** Rows that share theirs with another one. */
    long tied() {
        return tied;
    }

    /** Whether there were more positions than are kept. */
    boolean isFull() {
        return full;
    }

    /** Rows at positions that stand on more than one road. */
    long onOtherRoads() {
        long sum = 0;
        for (int i = 0; i < keys.length; i++) {
            sum += onOthers[i] ? counts[i] : 0;
        }
        return sum;
    }

    /** The position of the most rows among those of more than one road, or of all; null where none is shown. */
    @Nullable
    String commonest(boolean ofSeveralRoads) {
        String best = null;
        int most = 0;
        for (Map.Entry<Long, String> one : shown.entrySet()) {
            int at = find(one.getKey());
            if (counts[at] > most && (!ofSeveralRoads || onOthers[at])) {
                most = counts[at];
                best = one.getValue();
            }
        }
        return best;
    }

    int count(String position) {
        return counts[find(hash(position))];
    }

    private int find(long key) {
        int at = (int) (key & (keys.length - 1));
        while (counts[at] != 0 && keys[at] != key) {
            at = (at + 1) & (keys.length - 1);
        }
        return at;
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldCounts = counts;
        int[] oldRoads = roads;
        boolean[] oldOthers = onOthers;
        int length = oldKeys.length * 2;
        keys = new long[length];
        counts = new int[length];
        roads = new int[length];
        onOthers = Arrays.copyOf(new boolean[0], length);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldCounts[i] != 0) {
                int at = find(oldKeys[i]);
                keys[at] = oldKeys[i];
                counts[at] = oldCounts[i];
                roads[at] = oldRoads[i];
                onOthers[at] = oldOthers[i];
            }
        }
    }

    /** FNV-1a of 64 bits with its constants (Fowler, Noll, Vo; from memory), and its upper half folded in. */
    private static long hash(String text) {
        long hash = 0xcbf29ce484222325L;
        for (int i = 0; i < text.length(); i++) {
            hash = (hash ^ text.charAt(i)) * 0x100000001b3L;
        }
        return hash ^ hash >>> 29;
    }
}
