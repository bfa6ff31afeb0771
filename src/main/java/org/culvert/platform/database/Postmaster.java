package org.culvert.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What {@code postmaster.pid} in a data folder says about the PostgreSQL that works, or worked, on it. */
record Postmaster(long pid, int port) {
    private static final int PID_LINE = 0;
    private static final int PORT_LINE = 3;

    /** The entry in the lock file of a data folder, or null where there is none. */
    static @Nullable Postmaster find(Path data) throws IOException {
        try {
            List<String> lines = Files.readAllLines(lockFile(data));
            if (lines.size() <= PORT_LINE) {
                // It is being written at this moment, or its disk was full: the first line alone is certain.
                return lines.isEmpty()
                        ? null
                        : new Postmaster(Long.parseLong(lines.get(PID_LINE).strip()), 0);
            }
            return new Postmaster(
                    Long.parseLong(lines.get(PID_LINE).strip()),
                    Integer.parseInt(lines.get(PORT_LINE).strip()));
        } catch (NoSuchFileException none) {
            return null;
        } catch (NumberFormatException e) {
            throw new IOException(lockFile(data) + " cannot be read: " + e.getMessage(), e);
        }
    }

    static Path lockFile(Path data) {
        return data.resolve("postmaster.pid");
    }

    /** Whether the process lives and is a PostgreSQL of this home: a pid may long belong to somebody else. */
    boolean runsFrom(Path home) {
        return ProcessHandle.of(pid)
                .filter(ProcessHandle::isAlive)
                .map(process -> isPostgresOf(home, process))
                .orElse(false);
    }

    /** Whether the process is gone: ended, or ended and only not yet collected by its parent. */
    boolean isGone() {
        return ProcessHandle.of(pid).map(process -> !process.isAlive()).orElse(true) || isZombie();
    }

    /** Whether somebody else's process has the pid now. */
    boolean isSomebodyElse(Path home) {
        return ProcessHandle.of(pid)
                .flatMap(process -> process.info().command())
                .map(command -> !isPostgresOf(home, command))
                .orElse(false);
    }

    /** Whether any process, a postmaster or what one left behind, still works with the binaries of this home. */
    static boolean anyRunsFrom(Path home) {
        return ProcessHandle.allProcesses().anyMatch(process -> isPostgresOf(home, process));
    }

    private static boolean isPostgresOf(Path home, ProcessHandle process) {
        return process.info()
                .command()
                .map(command -> isPostgresOf(home, command))
                .orElse(false);
    }

    private static boolean isPostgresOf(Path home, String command) {
        // Linux adds " (deleted)" to the path of a program whose file is gone.
        String program = command.replaceFirst(" \\(deleted\\)$", "");
        return program.startsWith(home + "/postgresql-") && program.endsWith("/bin/postgres");
    }

    private boolean isZombie() {
        try {
            String stat = Files.readString(Path.of("/proc", Long.toString(pid), "stat"));
            int afterName = stat.lastIndexOf(')') + 2;
            return afterName < stat.length() && stat.charAt(afterName) == 'Z';
        } catch (IOException notLinuxOrGone) {
            return false;
        }
    }
}
