package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ConfiguredDatabaseTest {
    private static final String URL = "jdbc:postgresql://db.example.org/rescue";

    @Test
    void aMissingPasswordIsNamed() {
        Map<String, String> environment = Map.of("CULVERT_DATABASE_URL", URL, "CULVERT_DATABASE_USER", "server");
        assertThatThrownBy(() -> ConfiguredDatabase.read(environment))
                .isInstanceOf(CannotStartException.class)
                .hasMessageStartingWith("CULVERT_DATABASE_PASSWORD is not set.");
    }

    @Test
    void anAddressOfAnotherKindIsRefused() {
        Map<String, String> environment = Map.of(
                "CULVERT_DATABASE_URL", "jdbc:mysql://db.example.org/rescue",
                "CULVERT_DATABASE_USER", "server",
                "CULVERT_DATABASE_PASSWORD", "secret");
        assertThatThrownBy(() -> ConfiguredDatabase.read(environment))
                .isInstanceOf(CannotStartException.class)
                .hasMessageContaining("jdbc:postgresql://host:port/database");
    }

    @Test
    void migrationsRunAsTheServerUnlessSaidOtherwise() {
        Map<String, String> one = Map.of(
                "CULVERT_DATABASE_URL", URL,
                "CULVERT_DATABASE_USER", "server",
                "CULVERT_DATABASE_PASSWORD", "secret");
        assertThat(ConfiguredDatabase.read(one).migratorUser()).isEqualTo("server");
        Map<String, String> two = Map.of(
                "CULVERT_DATABASE_URL", URL,
                "CULVERT_DATABASE_USER", "server",
                "CULVERT_DATABASE_PASSWORD", "secret",
                "CULVERT_MIGRATOR_USER", "owner",
                "CULVERT_MIGRATOR_PASSWORD", "other");
        assertThat(ConfiguredDatabase.read(two).settings())
                .containsEntry("quarkus.datasource.username", "server")
                .containsEntry("quarkus.flyway.username", "owner")
                .containsEntry("quarkus.flyway.password", "other")
                .containsEntry("quarkus.flyway.placeholders.applicationRole", "server")
                .doesNotContainKey("quarkus.flyway.init-sql");
    }

    @Test
    void fourteenIsTooOldAndFifteenIsNot() {
        assertThatThrownBy(() -> ConfiguredDatabase.refuseOlderThan15(140_022, "14.22"))
                .isInstanceOf(CannotStartException.class)
                .hasMessage("The configured database is PostgreSQL 14.22; Culvert needs 15 or later.");
        assertThatCode(() -> ConfiguredDatabase.refuseOlderThan15(150_000, "15.0"))
                .doesNotThrowAnyException();
    }

    @Test
    void passwordsAreNeverPrinted() {
        DatabaseAccess access = new DatabaseAccess(URL, "server", "secret", "owner", "other", null);
        assertThat(access.toString()).contains(URL, "server").doesNotContain("secret", "other");
    }
}
