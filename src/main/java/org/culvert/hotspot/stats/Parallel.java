package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Does numbered pieces of work, whose results must not depend on who does them, on some threads. */
public final class Parallel {
    private Parallel() {}

    /**
     * @param count the work is numbered {@code 0 .. count-1}
     * @param threads how many threads to use, at least 1
     * @param workers makes one worker a thread, with what that thread alone may change
     * @throws CancellationException if the calling thread was interrupted; the work is then abandoned
     */
    public static void forEach(int count, int threads, Supplier<IntConsumer> workers) {
        var next = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                running.add(pool.submit(() -> {
                    IntConsumer worker = workers.get();
                    for (int work = next.getAndIncrement(); work < count; work = next.getAndIncrement()) {
                        if (Thread.currentThread().isInterrupted()) {
                            return;
                        }
                        worker.accept(work);
                    }
                }));
            }
            for (Future<?> one : running) {
                one.get();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            var cancelled = new CancellationException("interrupted while computing");
            cancelled.initCause(e);
            throw cancelled;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
