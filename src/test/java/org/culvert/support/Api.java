package org.culvert.support;

/** The running server, asked over HTTP in a role. */
public final class Api {
    public static final String PASSWORD = TestAccounts.PASSWORD;

    private Api() {}

    /** The token of whoever has a role. */
    public static String token(String role) {
        return TestAccounts.token(role);
    }

    /** A JSON request by whoever has a role. */
    public static Request as(String role) {
        return Request.given().basic("test-" + role, token(role)).contentType(Request.JSON);
    }

    public static Answer post(String role, String path, String json) {
        return as(role).body(json).post(path).then();
    }

    /** Posts and wants it made. */
    public static Json make(String role, String path, String json) {
        return post(role, path, json).statusCode(201).extract().jsonPath();
    }

    public static Json get(String role, String path) {
        return as(role).get(path).then().statusCode(200).extract().jsonPath();
    }

    /** Changes a record as a client does: reads it, and sends its tag back with what is to become of it. */
    public static Answer change(String role, String record, String action, String json) {
        return as(role).header("If-Match", tag(role, record))
                .body(json)
                .post(record + action)
                .then();
    }

    /** The tag of a record as it is now. */
    public static String tag(String role, String record) {
        return as(role).get(record).then().statusCode(200).extract().header("ETag");
    }

    /** Corrects a record that was read just before. */
    public static Answer correct(String role, String record, String patch) {
        return correct(role, record, "", patch);
    }

    /** Corrects a part of a record that was read just before. */
    public static Answer correct(String role, String record, String part, String patch) {
        Request request = as(role).contentType("application/merge-patch+json");
        String tag = as(role).get(record).header("ETag");
        if (tag != null) {
            request.header("If-Match", tag);
        }
        return request.body(patch).patch(record + part).then();
    }
}
