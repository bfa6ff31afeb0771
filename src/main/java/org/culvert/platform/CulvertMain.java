package org.culvert.platform;

import io.quarkus.runtime.ApplicationLifecycleManager;
import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import org.culvert.platform.backup.BackupCommand;
import org.culvert.platform.database.CannotStartException;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.platform.personal.ListedErasures;

/** Starts the server: first its database, then everything else; stops them the other way round. */
@QuarkusMain
public final class CulvertMain {
    private static final long SERVER_STOP_PATIENCE_SECONDS = 60;

    CulvertMain() {}

    public static void main(String... args) {
        if (BackupCommand.isMeant(args)) {
            System.exit(new BackupCommand(System.getenv(), System.out, System.err).run(args));
            return;
        }
        // Pictures are drawn in memory: no screen is wanted, even where one could be reached
        System.setProperty("java.awt.headless", "true");
        ServerDatabase database;
        try {
            database = ServerDatabase.open(System.getenv());
            honourErasures(database);
        } catch (CannotStartException e) {
            // Logging is not set up yet, and a held-back message would never be seen.
            System.err.println("Culvert cannot start. " + e.getMessage());
            System.exit(1);
            return;
        }
        database.access().publish();
        CountDownLatch serverStopped = new CountDownLatch(1);
        // The exit handler runs while the JVM is going down already and may not get to its end; a shutdown hook does.
        Thread stopper = new Thread(() -> stopAfter(serverStopped, database), "database stopper");
        Runtime.getRuntime().addShutdownHook(stopper);
        BiConsumer<Integer, Throwable> exit = ApplicationLifecycleManager.getDefaultExitCodeHandler();
        ApplicationLifecycleManager.setDefaultExitCodeHandler((code, failure) -> {
            serverStopped.countDown();
            exit.accept(code, failure);
        });
        Quarkus.run(args);
        // Only live coding comes here: the changed server is started in the same JVM and takes the database over.
        ApplicationLifecycleManager.setDefaultExitCodeHandler(exit);
        handOver(stopper, database);
    }

    /** However the database came back, whoever was erased stays erased. */
    private static void honourErasures(ServerDatabase database) {
        Path list = ListedErasures.file(System.getenv(), ServerDatabase.home(System.getenv()));
        try (Connection owner = database.access().connectAsOwner("culvert start")) {
            ListedErasures.honour(owner, list);
        } catch (SQLException | IOException | IllegalStateException e) {
            database.close();
            throw new CannotStartException(
                    "The list of erasures " + list + " cannot be honoured: " + e.getMessage(), e);
        }
    }

    private static void handOver(Thread stopper, ServerDatabase database) {
        try {
            Runtime.getRuntime().removeShutdownHook(stopper);
        } catch (IllegalStateException theJvmIsGoingDown) {
            return;
        }
        database.release();
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
