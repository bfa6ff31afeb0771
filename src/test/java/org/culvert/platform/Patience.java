package org.culvert.platform;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for what must come to pass, and fails when it does not. */
public final class Patience {
    private static final Duration LONG_ENOUGH = Duration.ofMinutes(2);
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(50);

    private Patience() {}

    public static void until(String what, BooleanSupplier holds) {
        long deadline = System.nanoTime() + LONG_ENOUGH.toNanos();
        while (!holds.getAsBoolean()) {
            if (System.nanoTime() > deadline) {
                throw new AssertionError("Not within " + LONG_ENOUGH + ": " + what);
            }
            LockSupport.parkNanos(BETWEEN_LOOKS.toNanos());
        }
    }
}
