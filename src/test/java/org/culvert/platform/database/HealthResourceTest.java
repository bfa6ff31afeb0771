package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HealthResourceTest {
    @Inject
    DataSource database;

    @Test
    void serverIsReadyOnARealDatabaseWithTheNewestRoads() {
        World.shared();
        Request.given()
                .get("/q/health/ready")
                .then()
                .statusCode(200)
                .body("status", equalTo("UP"))
                .body("checks.name", hasItem("Database connections health check"))
                .body("checks.find { it.name == 'road network' }.status", equalTo("UP"))
                .body("checks.find { it.name == 'road network' }.data.imported", equalTo(true))
                .body("checks.find { it.name == 'road network' }.data.links", greaterThan(2));
    }

    @Test
    void liveAndStartedWantNoDatabase() {
        Request.given().get("/q/health/live").then().statusCode(200).body("checks.size()", equalTo(0));
        Request.given().get("/q/health/started").then().statusCode(200).body("checks.size()", equalTo(0));
    }

    /** As the database says itself; it would be on wherever nobody switched it off. */
    @Test
    void noQueryOfTheServerIsCompiledBeforeItIsRun() throws SQLException {
        try (var connection = database.getConnection();
                var statement = connection.createStatement();
                var told = statement.executeQuery("SELECT setting, boot_val FROM pg_settings WHERE name = 'jit'")) {
            assertThat(told.next()).isTrue();
            assertThat(told.getString("setting")).isEqualTo("off");
            assertThat(told.getString("boot_val")).isEqualTo("on");
        }
    }
}
