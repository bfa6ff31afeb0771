package org.culvert.platform.backup;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.platform.Role;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.platform.database.UnpackedPostgres;
import org.culvert.support.Api;

/** Backups and restores as an operator asks for them, and what the databases hold. */
final class BackupWorld {
    record Ended(int code, String said) {}

    private BackupWorld() {}

    /** What names a server's own database in a folder that is made for it. */
    static Map<String, String> home(Path folder) {
        return Map.of("CULVERT_HOME", UnpackedPostgres.into(folder).toString());
    }

    static String call(String words) {
        return Api.make(Role.DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "caller":{"name":"Some Caller","phone":"000"},"words":"%s \\\\ \\t and a second\\nline",
                         "animals":[{"taxonGroup":"turtles","individualCount":1,"vitality":"alive"}]}
                        """.formatted(words)).getString("callId");
    }

    /** The database of the running server, as an operator would name it. */
    static Map<String, String> running() {
        Map<String, String> environment = new HashMap<>();
        environment.put("CULVERT_DATABASE_URL", System.getProperty("quarkus.flyway.jdbc-url"));
        environment.put("CULVERT_DATABASE_USER", System.getProperty("quarkus.datasource.username"));
        environment.put("CULVERT_DATABASE_PASSWORD", System.getProperty("quarkus.datasource.password"));
        environment.put("CULVERT_MIGRATOR_USER", System.getProperty("quarkus.flyway.username"));
        environment.put("CULVERT_MIGRATOR_PASSWORD", System.getProperty("quarkus.flyway.password"));
        return environment;
    }

    static Ended run(Map<String, String> environment, String word, Path file) {
        var said = new ByteArrayOutputStream();
        var stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        int code = new BackupCommand(environment, stream, stream).run(word, file.toString());
        return new Ended(code, said.toString(StandardCharsets.UTF_8));
    }

    static List<String> column(Map<String, String> environment, String sql) throws SQLException {
        List<String> values = new ArrayList<>();
        try (ServerDatabase database = ServerDatabase.openToRead(environment);
                Connection connection = database.access().connectAsOwner("culvert test");
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                values.add(rows.getString(1));
            }
        }
        return values;
    }

    /** Keeps a figure beside the test's own report. */
    static void note(String words) throws IOException {
        Path figures = Files.createDirectories(Path.of("target", "figures"));
        Files.writeString(
                figures.resolve("backup.txt"), words + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
}
