package org.culvert.platform.database;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HealthResourceTest {
    @Test
    void serverIsReadyOnARealDatabase() {
        given().get("/q/health/ready").then().statusCode(200).body("status", equalTo("UP"));
    }
}
