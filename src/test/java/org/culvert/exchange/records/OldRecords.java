package org.culvert.exchange.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Patience;
import org.culvert.support.Api;

/** Files of old records, sent and tried over HTTP. */
final class OldRecords {
    static final String HEADING = "date,time,road,km,latitude,longitude,species,number,remarks";
    static final String COLUMNS = """
            {"columns":{"day":0,"time":1,"road":2,"chainage":3,"decimalLatitude":4,"decimalLongitude":5,
             "scientificName":6,"individualCount":7,"remarks":8},"dayOrder":"yearMonthDay","uncertaintyMetres":20,
             "chainageUnit":"kilometres","cause":"collisionWithVehicle"}
            """;

    private OldRecords() {}

    /** Sends a file of the usual columns. */
    static String send(List<String> rows) {
        return send(HEADING + "\r\n" + String.join("\r\n", rows) + "\r\n");
    }

    /** Sends a file; returns its identifier. */
    static String send(String text) {
        return Api.as(COORDINATOR)
                .contentType("text/csv")
                .queryParam("fileName", "old-" + UUID.randomUUID() + ".csv")
                .body(text.getBytes(StandardCharsets.UTF_8))
                .post("/api/record-files")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    static String decide(String file, String reading) {
        return Api.post(COORDINATOR, "/api/record-files/" + file + "/reading", reading)
                .statusCode(201)
                .extract()
                .path("id");
    }

    /** Tries a file; returns the identifier of the trial once it is done. */
    static String tryOut(String file) {
        String trial = Api.post(COORDINATOR, "/api/record-files/" + file + "/trials", "")
                .statusCode(202)
                .extract()
                .path("id");
        assertThat(outcome("/api/record-trials/" + trial))
                .as(() -> Api.get(COORDINATOR, "/api/record-trials/" + trial).getString("failure"))
                .isEqualTo("done");
        return trial;
    }

    /** Sends rows of the usual columns and tries them. */
    static String tried(List<String> rows) {
        String file = send(rows);
        decide(file, COLUMNS);
        return tryOut(file);
    }

    /** Takes rows in; returns the identifier of the taking, and how it ended. */
    static String[] take(String trial, String which, boolean doubtful, boolean oneIncident) {
        String taking = Api.post(
                        COORDINATOR, "/api/record-trials/" + trial + "/taking", entry(which, doubtful, oneIncident))
                .statusCode(202)
                .extract()
                .path("id");
        return new String[] {taking, outcome("/api/record-takings/" + taking)};
    }

    static String entry(String which, boolean doubtful, boolean oneIncident) {
        return """
                {"which":"%s","doubtful":%s,"oneIncident":%s,"reason":"records of the council, asked for by letter"}
                """.formatted(which, doubtful, oneIncident);
    }

    private static String outcome(String path) {
        Patience.until(path, () -> List.of("done", "failed").contains(state(path)));
        return state(path);
    }

    private static String state(String path) {
        return Api.get(COORDINATOR, path).getString("state");
    }
}
