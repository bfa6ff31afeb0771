package org.culvert.platform.personal;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;

/** People for tests, rules for them, and a look into every table. */
public final class PersonalWorld {
    private PersonalWorld() {}

    /** Rules as the published ones are: three and five years after the last disposition. */
    public static void enterDuties(String kind) {
        duty(kind, "US-OR", 3, "Oregon Administrative Rules 635-062-0055: records are kept for three years");
        duty(kind, "US-WA", 5, "Washington Administrative Code 220-450-130: records are kept for five years");
    }

    private static void duty(String kind, String jurisdiction, int years, String source) {
        Api.make(ADMIN, "/api/retention-rules", """
                {"jurisdiction":"%s","kind":"%s","years":%d,"source":"%s","readOn":"2026-09-01","validFrom":"2000-01-01"}
                """.formatted(jurisdiction, kind, years, source));
    }

    /** Erases whoever is due, however many that are; says how many were. */
    public static int eraseWhoIsDue() {
        int erased = 0;
        Json round;
        do {
            round = Api.post(ADMIN, "/api/erasures", "")
                    .statusCode(200)
                    .extract()
                    .jsonPath();
            erased += round.getInt("erased");
        } while (round.getBoolean("moreAreDue"));
        return erased;
    }

    /** Other tests' people are kept, whatever they are. */
    public static void endDuties() {
        for (Map<String, Object> rule : Api.get(ADMIN, "/api/retention-rules").<Map<String, Object>>getList("$")) {
            if (rule.get("validTo") == null) {
                Api.change(
                                ADMIN,
                                "/api/retention-rules/" + rule.get("id"),
                                "/ending",
                                "{\"validTo\":\"2000-01-02\",\"reason\":\"the test is over\"}")
                        .statusCode(200);
            }
        }
    }

    /** A call about a turtle, by somebody; returns its identifier. */
    public static String call(String receivedAt, String caller, String words) {
        return Api.make(DISPATCHER, "/api/calls", """
                        {"receivedAt":"%s","people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"Chelodina longicollis","vitality":"alive"}],
                         "caller":%s,"words":"%s"}
                        """.formatted(receivedAt, caller, words))
                .getString("callId");
    }

    public static Json callView(String id) {
        return Api.get(DISPATCHER, "/api/calls/" + id);
    }

    public static String callerOf(String callId) {
        return Api.get(COORDINATOR, "/api/calls/" + callId).getString("callerId");
    }

    public static String person(String id) {
        return "/api/people/" + id;
    }

    /** In how many rows of which tables something stands, in any column, whatever it is kept as. */
    public static Map<String, Integer> whereItStands(DataSource database, List<String> words) throws SQLException {
        try (Connection connection = database.getConnection()) {
            return whereItStands(connection, words);
        }
    }

    public static Map<String, Integer> whereItStands(Connection connection, List<String> words) throws SQLException {
        Map<String, Integer> found = new TreeMap<>();
        for (String table : tables(connection)) {
            boolean hasBodies = table.equals("personal.idempotency_keys");
            String counts = words.stream()
                    .map(word -> "count(*) filter (where told ilike '%" + word + "%'"
                            + (hasBodies ? " or position(convert_to('" + word + "', 'UTF8') in body) > 0" : "") + ")")
                    .collect(Collectors.joining(", "));
            // Each row is told once for all words
            try (Statement statement = connection.createStatement();
                    ResultSet rows =
                            statement.executeQuery("select " + counts + " from (select to_jsonb(t)::text as told"
                                    + (hasBodies ? ", body" : "") + " from " + table + " t offset 0) told_once")) {
                rows.next();
                for (int i = 0; i < words.size(); i++) {
                    if (rows.getInt(i + 1) > 0) {
                        found.merge(table + " " + words.get(i), rows.getInt(i + 1), Integer::sum);
                    }
                }
            }
        }
        return found;
    }

    private static List<String> tables(Connection connection) throws SQLException {
        List<String> tables = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("select table_schema || '.' || table_name from information_schema.tables"
                                + " where table_schema in ('public', 'personal', 'as_it_was') and table_type = 'BASE TABLE'"
                                + " order by 1")) {
            while (rows.next()) {
                tables.add(rows.getString(1));
            }
        }
        return tables;
    }
}
