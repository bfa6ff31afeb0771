package org.culvert.platform.backup;

import java.util.Collection;
import java.util.Comparator;
import org.flywaydb.core.api.MigrationVersion;

/** Versions of the schema, compared as Flyway does: 9 before 10, 010 as 10. */
final class SchemaVersions {
    static final Comparator<String> ORDER = Comparator.comparing(MigrationVersion::fromVersion);

    private SchemaVersions() {}

    static String latest(Collection<String> versions) {
        return versions.stream().max(ORDER).orElse("0");
    }
}
