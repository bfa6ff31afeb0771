package org.culvert.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Runs one of PostgreSQL's programs to its end, with what it said. */
record Command(int exitCode, String output) {

    static Command run(List<String> command, Duration patience) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        if ("root".equals(System.getProperty("user.name"))) {
            // PostgreSQL refuses to run as root: inside a user namespace of its own it is nobody.
            line.addAll(List.of("unshare", "-U"));
        }
        line.addAll(command);
        // Into a file, not a pipe: what the program leaves running in the background could hold a pipe open for ever.
        Path said = Files.createTempFile("culvert-database", ".out");
        try {
            ProcessBuilder builder = new ProcessBuilder(line)
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .redirectInput(
                            ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()));
            Map<String, String> environment = builder.environment();
            environment.keySet().removeIf(name -> name.startsWith("PG"));
            environment.put("LC_ALL", "C");
            Process process = builder.start();
            if (!process.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS)) {
                process.destroyForcibly();
                throw new IOException("No end of " + line.get(line.indexOf(command.get(0))) + " within " + patience);
            }
            return new Command(process.exitValue(), Files.readString(said).strip());
        } finally {
            Files.deleteIfExists(said);
        }
    }

    boolean failed() {
        return exitCode != 0;
    }
}
