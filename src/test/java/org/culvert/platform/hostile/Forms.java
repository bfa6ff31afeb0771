package org.culvert.platform.hostile;

import java.net.URI;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.culvert.platform.FormSignIn;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.Request;

/** Sends the forms of the pages, as somebody who is signed in and has every role. */
final class Forms {
    private static final Pattern SECRET = Pattern.compile("name=\"csrf\" value=\"([^\"]+)\"");
    private static final String PASSWORD = "ten wombats on two bends";
    private static final Map<String, String> GOOD = Map.ofEntries(
            Map.entry("before", "not the one before"),
            Map.entry("password", "eleven wombats by a creek"),
            Map.entry("again", "eleven wombats by a creek"),
            Map.entry("name", "a program"),
            Map.entry("scopes", "hotspot-runs:read"),
            Map.entry("roles", "rescuer"),
            Map.entry("next", "/hotspots"),
            Map.entry("periodFrom", "2019-01-01"),
            Map.entry("periodTo", "2019-12-31"),
            Map.entry("months", "3"),
            Map.entry("seasonWindow", ""),
            Map.entry("taxonGroup", "hostile"),
            Map.entry("owner", ""),
            Map.entry("reachMetres", "300"),
            Map.entry("sigmaMetres", ""),
            Map.entry("alsoAsk", "secondary"),
            Map.entry("reason", "not wanted"),
            Map.entry("simulations", "19"),
            Map.entry("kind", "fence"),
            Map.entry("words", "a fence"),
            Map.entry("road", "Mill Road"),
            Map.entry("fromChainageMetres", "3000"),
            Map.entry("toChainageMetres", "5000"),
            Map.entry("endsMetres", "500"),
            Map.entry("builtFrom", "2019-01-01"),
            Map.entry("builtUntil", "2019-12-31"),
            Map.entry("endedOn", ""),
            Map.entry("effortChange", ""),
            Map.entry("publicityChange", ""),
            Map.entry("capacity", "chair"),
            Map.entry("signedOn", "2020-01-01"),
            Map.entry("phone", ""),
            Map.entry("email", ""),
            Map.entry("scientificName", ""),
            Map.entry("seed", "7"),
            Map.entry("chance", "per-kilometre"));

    /** The file is one of a row under {@code Date,Road,km,Species,Notes}. */
    private static final Map<String, String> RECORDS = Map.ofEntries(
            Map.entry("seen", "UTF-8|comma|1"),
            Map.entry("encoding", "UTF-8"),
            Map.entry("separator", "comma"),
            Map.entry("headingRow", "1"),
            Map.entry("holds", "0:day"),
            Map.entry("question", "cause"),
            Map.entry("answer", "unknown"),
            Map.entry("word", "animals:fox"),
            Map.entry("meaning", "undecided"),
            Map.entry("other", ""),
            Map.entry("uncertaintyMetres", "20"),
            Map.entry("act", "try"),
            Map.entry("which", "good"),
            Map.entry("doubtful", "true"),
            Map.entry("oneIncident", "false"));

    private static final Map<String, String> TRAFFIC = Map.ofEntries(
            Map.entry("place", "Mill Road 4"),
            Map.entry("from", "2019-01-01"),
            Map.entry("to", "2019-12-31"),
            Map.entry("vehiclesPerDay", "2000"),
            Map.entry("measure", "annualAverage"),
            Map.entry("standardError", ""),
            Map.entry("daysCounted", "7"),
            Map.entry("directions", "both"),
            Map.entry("direction", ""),
            Map.entry("heavyVehicleShare", "0.1"),
            Map.entry("kind", "shortTerm"));

    private static final Map<String, String> RULES = Map.ofEntries(
            Map.entry("jurisdiction", "XH"),
            Map.entry("kind", "code"),
            Map.entry("exceptScientificNames", "Testudo alia"),
            Map.entry("appliesTo", "any"),
            Map.entry("test", "fitness"),
            Map.entry("originKnownWithinMetres", "100"),
            Map.entry("allowedGrounds", "works: building works"),
            Map.entry("words", "it is fit"),
            Map.entry("source", "a code"),
            Map.entry("readOn", "2020-01-01"),
            Map.entry("reviewBy", "2090-01-01"),
            Map.entry("validFrom", "2020-01-01"),
            Map.entry("version", "0"),
            Map.entry("reason", "read again"));

    private static final Map<String, String> PLANS = Map.ofEntries(
            Map.entry("jurisdiction", "XH"),
            Map.entry("withinMetres", "2000"),
            Map.entry("siteId", "found"),
            Map.entry("vetName", "Dr Vet"),
            Map.entry("vetRegistration", "V 1"),
            Map.entry("movement", "fit"),
            Map.entry("of", "landowner"),
            Map.entry("given", "true"),
            Map.entry("ground", "works"),
            Map.entry("grounds", "injury"),
            Map.entry("words", "as it was seen"),
            Map.entry("by", "authority"),
            Map.entry("name", "the office"),
            Map.entry("reference", "letter 7"));

    private static final Map<String, String> DECISIONS = Map.of(
            "what", "opinion",
            "vetName", "Dr Vet",
            "vetRegistration", "V 1",
            "agrees", "true",
            "words", "as it was seen",
            "number", "P 1",
            "issuedBy", "the office",
            "validFrom", "2026-01-01");

    /** What is good there, by how the path begins. */
    private static final Map<String, Map<String, String>> OF_ROOMS = Map.ofEntries(
            Map.entry("/records/", RECORDS),
            Map.entry("/traffic", TRAFFIC),
            Map.entry(
                    "/cases",
                    Map.of("words", "by the creek", "at", "2020-01-01T10:00", "kind", "exposure", "value", "412,5")),
            Map.entry(
                    "/clinic",
                    Map.of(
                            "phone", "of the practice",
                            "whenClosed", "ring the desk",
                            "treats", "hostile",
                            "opening", "Monday 08:00-18:30",
                            "reason", "not wanted")),
            Map.entry(
                    "/clutches",
                    Map.of(
                            "what", "temperature",
                            "celsius", "28.5",
                            "source", "a thermometer",
                            "at", "2020-01-01T10:00",
                            "eggs.recovered", "4")),
            Map.entry("/release-area/", PLANS),
            Map.entry("/release-rules", RULES),
            Map.entry(
                    "/releases",
                    Map.of(
                            "knownBy", "guessed",
                            "alive", "unknown",
                            "words", "as it was seen",
                            "endedBy", "a neighbour",
                            "reason", "not wanted")),
            Map.entry("/non-release-decisions/", DECISIONS),
            Map.entry("/kept/", Map.of("reason", "found out later", "words", "as it was seen", "sex", "male")),
            Map.entry(
                    "/settings",
                    Map.of(
                            "jurisdiction", "XH",
                            "ends", "caseEnded",
                            "length", "36",
                            "readOn", "2020-01-01",
                            "body.key", "hostile",
                            "geometry", "{\"type\":\"Point\",\"coordinates\":[150.02,-30.5]}")));

    /** Rooms whose forms the contract names no fields of, since these come of the bodies that they make. */
    private static final Set<String> UNNAMED = Set.of(
            "/cases",
            "/clinic",
            "/clutches",
            "/kept/",
            "/release-area/",
            "/release-rules",
            "/releases",
            "/non-release-decisions/",
            "/settings");

    private final DataSource database;
    private final FormSignIn browser = new FormSignIn(URI.create(Request.server() + "/"));
    private final String secret;

    Forms(DataSource database) throws SQLException {
        this.database = database;
        String username = "hostile-" + UUID.randomUUID();
        Api.make(
                Role.ADMIN,
                "/api/accounts",
                "{\"username\":\"%s\",\"password\":\"%s\",\"roles\":[\"%s\"]}"
                        .formatted(username, PASSWORD, String.join("\",\"", Role.ALL)));
        if (browser.signIn(username, PASSWORD).statusCode() != 303) {
            throw new IllegalStateException("nobody is signed in");
        }
        Matcher found = SECRET.matcher(browser.get("/account").body());
        if (!found.find()) {
            throw new IllegalStateException("the account page has no secret");
        }
        this.secret = found.group(1);
        letItTryAgain();
    }

    static List<String> values() {
        List<String> values = new ArrayList<>(BadValue.WORDS);
        values.addAll(List.of(
                "",
                " ",
                "-1",
                "NaN",
                "1e400",
                "9223372036854775808",
                "2026-02-30",
                "+999999999-12-31",
                "1500-01-01",
                "13",
                "a\0b",
                "\u0007",
                "x".repeat(1_900),
                "x".repeat(5_000),
                "\ud83e\udd94".repeat(300)));
        return values;
    }

    /** @param named those that the contract names */
    static List<String> fields(String path, List<String> named) {
        List<String> fields = new ArrayList<>(named);
        for (String room : UNNAMED) {
            if (path.startsWith(room)) {
                OF_ROOMS.getOrDefault(room, Map.of()).keySet().stream()
                        .filter(field -> !fields.contains(field))
                        .sorted()
                        .forEach(fields::add);
            }
        }
        return fields;
    }

    /** @param inParts whether it is a form with a file in it */
    HttpResponse<String> send(String path, List<String> fields, String spoilt, String value, boolean inParts)
            throws SQLException {
        List<String> form = new ArrayList<>();
        for (String field : fields) {
            if (!field.equals("csrf")) {
                form.add(field);
                form.add(field.equals(spoilt) ? value : good(path, field));
            }
        }
        String sent = spoilt.equals("csrf") ? value : secret;
        String[] whole = form.toArray(String[]::new);
        HttpResponse<String> answer = inParts ? browser.postParts(path, sent, whole) : browser.post(path, sent, whole);
        letItTryAgain();
        return answer;
    }

    /** A form with a file. */
    HttpResponse<String> upload(String path, String fileName, String key, String text) throws SQLException {
        HttpResponse<String> answer = browser.upload(path, secret, "key", key, "file", fileName, text);
        letItTryAgain();
        return answer;
    }

    private static String good(String path, String field) {
        for (Map.Entry<String, Map<String, String>> room : OF_ROOMS.entrySet()) {
            String good = path.startsWith(room.getKey()) ? room.getValue().get(field) : null;
            if (good != null) {
                return good;
            }
        }
        return GOOD.getOrDefault(field, "hostile-" + UUID.randomUUID());
    }

    /** Everything here comes from one address, which other tests need too. */
    private void letItTryAgain() throws SQLException {
        try (var connection = database.getConnection();
                var statement = connection.createStatement()) {
            statement.executeUpdate("update personal.sign_in_tries set tried_at = tried_at - interval '1 hour'");
        }
    }
}
