package org.culvert.platform;

import io.quarkus.runtime.ApplicationLifecycleManager;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.culvert.platform.database.CannotStartException;
import org.culvert.platform.database.ServerDatabase;

/** Starts the server: first its database, then everything else; stops them the other way round. */
@QuarkusMain
public final class CulvertMain {
    private static final long SERVER_STOP_PATIENCE_SECONDS = 60;

    private CulvertMain() {}

    public static void main(String... args) {
        ServerDatabase database;
        try {
            database = ServerDatabase.open(System.getenv());
        } catch (CannotStartException e) {
            // Logging is not set up yet, and a held-back message would never be seen.
            System.err.println("Culvert cannot start. " + e.getMessage());
            System.exit(1);
            return;
        }
        database.access().publish();
        CountDownLatch serverStopped = new CountDownLatch(1);
        // The exit handler runs while the JVM is going down already and may not get to its end; a shutdown hook does.
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stopAfter(serverStopped, database), "database stopper"));
        ApplicationLifecycleManager.setDefaultExitCodeHandler((code, failure) -> {
            serverStopped.countDown();
            System.exit(code);
        });
        Quarkus.run(args);
    }

    private static void stopAfter(CountDownLatch serverStopped, ServerDatabase database) {
        try {
            if (!serverStopped.await(SERVER_STOP_PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                System.err.println("The server did not stop in time; its database is stopped now.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        database.close();
    }
}
