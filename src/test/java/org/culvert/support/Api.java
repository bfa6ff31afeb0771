package org.culvert.support;

import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;

/** The running server, asked over HTTP in a role. */
public final class Api {
    public static final String PASSWORD = TestAccounts.PASSWORD;

    private Api() {}

    /** A JSON request by whoever has a role. */
    public static RequestSpecification as(String role) {
        return RestAssured.given()
                .auth()
                .preemptive()
                .basic("test-" + role, PASSWORD)
                .contentType(ContentType.JSON);
    }

    public static ValidatableResponse post(String role, String path, String json) {
        return as(role).body(json).post(path).then();
    }

    /** Posts and wants it made. */
    public static JsonPath make(String role, String path, String json) {
        return post(role, path, json).statusCode(201).extract().jsonPath();
    }

    public static JsonPath get(String role, String path) {
        return as(role).get(path).then().statusCode(200).extract().jsonPath();
    }
}
