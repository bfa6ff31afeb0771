package org.culvert.platform.backup;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.culvert.platform.database.CannotStartException;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.platform.personal.ListedErasures;

/** The two words after the jar that are not a server: {@code backup FILE} and {@code restore FILE}. */
public final class BackupCommand {
    private static final List<String> WORDS = List.of("backup", "restore");
    private static final int USAGE = 2;

    private final Map<String, String> environment;
    private final PrintStream out;
    private final PrintStream errors;

    public BackupCommand(Map<String, String> environment, PrintStream out, PrintStream errors) {
        this.environment = environment;
        this.out = out;
        this.errors = errors;
    }

    /** Whether the server was called for one of these instead of to serve. */
    public static boolean isMeant(String... arguments) {
        return arguments.length > 0 && WORDS.contains(arguments[0]);
    }

    /** Does it, and gives the exit code of the process. */
    public int run(String... arguments) {
        if (arguments.length != 2) {
            errors.println("Say " + arguments[0] + " FILE.");
            return USAGE;
        }
        Path file = Path.of(arguments[1]);
        try {
            if (arguments[0].equals("backup")) {
                backup(file);
            } else {
                restore(file);
            }
            return 0;
        } catch (BackupException | CannotStartException e) {
            errors.println(
                    (arguments[0].equals("backup") ? "No backup was made. " : "Restoring failed. ") + e.getMessage());
            return 1;
        }
    }

    private void backup(Path file) {
        try (ServerDatabase database = ServerDatabase.openToRead(environment)) {
            BackupManifest manifest = new Backup(database.access(), new Progress(out)).write(file);
            out.println(said("Backed up into", file, manifest));
        }
    }

    private void restore(Path file) {
        try (BackupFile backup = BackupFile.open(file)) {
            BackupManifest manifest = backup.manifest();
            out.println(file + " is whole: taken at " + manifest.takenAt() + " by Culvert " + manifest.culvertVersion()
                    + " from PostgreSQL " + manifest.postgresqlVersion() + ".");
            try (ServerDatabase database = ServerDatabase.openToFill(environment)) {
                var restore = new Restore(database.access(), new Progress(out));
                restore.load(backup);
                restore.migrateForward();
                restore.endSignIns();
                honourErasures(database);
                database.keep();
            }
            out.println(said("Restored", file, manifest));
        }
    }

    /** Before anybody can read it: who was erased since the backup was taken is not in what is served. */
    private void honourErasures(ServerDatabase database) {
        Path list = ListedErasures.file(environment, ServerDatabase.home(environment));
        if (!Files.exists(list)) {
            out.println("There is no list of erasures in " + list
                    + ": whoever was erased or hidden since the backup was taken"
                    + " is back. If there is a list elsewhere, name it in CULVERT_ERASURES when you start the server.");
            return;
        }
        try (Connection owner = database.access().connectAsOwner("culvert restore")) {
            out.println("Honoured the list of erasures: " + ListedErasures.honour(owner, list) + ".");
        } catch (SQLException | IOException | IllegalStateException e) {
            throw new BackupException("The list of erasures " + list + " cannot be honoured: " + e.getMessage(), e);
        }
    }

    private static String said(String what, Path file, BackupManifest manifest) {
        return String.format(
                Locale.ROOT,
                "%s %s: %,d rows of %d tables, as they were at %s.",
                what,
                file,
                manifest.rows(),
                manifest.tables().size(),
                manifest.takenAt());
    }
}
