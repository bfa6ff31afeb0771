package org.culvert.road.network;

import java.util.Arrays;

/**
 * Numbers vertices: equal coordinates, rounded to a grid far finer than any survey, get the same number. Open addressing on
 * flat arrays.
 */
final class VertexNumbers {
    private final double cell;
    private long[] firsts;
    private long[] seconds;
    private int[] numbers;
    private int count;

    /** @param cell size of the grid in the unit of the coordinates */
    VertexNumbers(double cell, int expected) {
        this.cell = cell;
        int capacity = Integer.highestOneBit(Math.max(16, expected) * 2 - 1) * 2;
        this.firsts = new long[capacity];
        this.seconds = new long[capacity];
        this.numbers = new int[capacity];
        Arrays.fill(numbers, -1);
    }

    int count() {
        return count;
    }

    int numberOf(double first, double second) {
        if (2 * (count + 1) > numbers.length) {
            grow();
        }
        long a = Math.round(first / cell);
        long b = Math.round(second / cell);
        int slot = slotOf(a, b);
        if (numbers[slot] < 0) {
            firsts[slot] = a;
            seconds[slot] = b;
            numbers[slot] = count++;
        }
        return numbers[slot];
    }

    private int slotOf(long a, long b) {
        long mixed = a * 0x9E3779B97F4A7C15L ^ Long.rotateLeft(b * 0xC2B2AE3D27D4EB4FL, 31);
        mixed ^= mixed >>> 32;
        mixed *= 0x9E3779B97F4A7C15L;
        int slot = (int) (mixed >>> 33) & (numbers.length - 1);
        while (numbers[slot] >= 0 && (firsts[slot] != a || seconds[slot] != b)) {
            slot = (slot + 1) & (numbers.length - 1);
        }
        return slot;
    }

    private void grow() {
        long[] oldFirsts = firsts;
        long[] oldSeconds = seconds;
        int[] oldNumbers = numbers;
        firsts = new long[oldNumbers.length * 2];
        seconds = new long[oldNumbers.length * 2];
        numbers = new int[oldNumbers.length * 2];
        Arrays.fill(numbers, -1);
        for (int i = 0; i < oldNumbers.length; i++) {
            if (oldNumbers[i] >= 0) {
                int slot = slotOf(oldFirsts[i], oldSeconds[i]);
                firsts[slot] = oldFirsts[i];
                seconds[slot] = oldSeconds[i];
                numbers[slot] = oldNumbers[i];
            }
        }
    }
}
