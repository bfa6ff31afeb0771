package org.culvert.platform.backup;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import org.culvert.platform.database.DatabaseAccess;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/** The migrations of this build, run as the starting server runs them. */
final class Migrations {
    private final FluentConfiguration settings;

    Migrations(DatabaseAccess access) {
        settings = Flyway.configure(Migrations.class.getClassLoader())
                .dataSource(access.url(), access.migratorUser(), access.migratorPassword())
                .locations("classpath:db/migration")
                .schemas("public")
                .connectRetries(10)
                .placeholders(Map.of("applicationRole", access.user()));
        if (access.owner() != null) {
            settings.initSql("SET ROLE \"" + access.owner() + "\"");
        }
    }

    /** Checksum by version of all migrations that this build brings. */
    Map<String, Integer> checksums() {
        Map<String, Integer> checksums = new TreeMap<>();
        Arrays.stream(settings.load().info().all())
                .filter(info -> info.getVersion() != null && info.getChecksum() != null && isBrought(info))
                .forEach(info -> checksums.put(info.getVersion().getVersion(), info.getChecksum()));
        return checksums;
    }

    private static boolean isBrought(MigrationInfo info) {
        return info.getState().isResolved();
    }

    void migrateTo(String version) {
        migrate(settings.target(version));
    }

    void migrateForward() {
        migrate(settings.target("latest"));
    }

    private static void migrate(FluentConfiguration to) {
        try {
            to.load().migrate();
        } catch (FlywayException e) {
            throw new BackupException("The tables cannot be laid: " + e.getMessage(), e);
        }
    }
}
