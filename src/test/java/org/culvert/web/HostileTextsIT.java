package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.culvert.hotspot.HostileEvidence;
import org.culvert.release.ReleaseWorld;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that would run if a page took them for anything but texts, on every page that can show one, in Chromium. */
@QuarkusTest
class HostileTextsIT {
    private static final String TEXT = HostileEvidence.TEXT;
    private static final String QUOTED = URLEncoder.encode(TEXT, StandardCharsets.UTF_8);

    /** ISO 3166 leaves XA to XZ to users. */
    private static final String LAW = "XH-T";

    @TempDir
    Path folder;

    @Test
    void whatWasStoredAsATextIsShownAsOneAndNeverRun() {
        String run = HostileEvidence.make();
        String works = HostileEvidence.makeWorks();
        Api.as(ADMIN)
                .body(HostileEvidence.json(Map.of("name", TEXT, "scopes", List.of("taxa:read"))))
                .post("/api/tokens")
                .then()
                .statusCode(201);
        String region = Api.as(ADMIN).get("/api/region").asString();
        nameRegion(TEXT);
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            whoIsNobodyMeetsThem(browser);
            signIn(browser);
            storedOnesAreTexts(browser, run);
            storedOnesOfWorksAreTexts(browser, works);
            typedOnesComeBackAsTexts(browser);
            typedOnesOfWorksComeBackAsTexts(browser);
            storedRulesAreTexts(browser);
            typedOnesOfRulesComeBackAsTexts(browser);
            browser.open("/account");
            browser.press("form[action='/sign-out'] button");
            browser.open("/sign-in");
            signIn(browser, "test-coordinator");
            storedOnesOfAnAreaAreTexts(browser);
        } finally {
            Api.as(ADMIN).body(told(region)).put("/api/region").then().statusCode(200);
        }
    }

    private static void whoIsNobodyMeetsThem(Browser browser) {
        shows(browser, "/", TEXT);
        shows(browser, "/sign-in?next=" + QUOTED, "Sign in");
        shows(browser, "/invitation/" + QUOTED.replace("+", "%20"), "This link was used");
        shows(browser, "/problems/" + QUOTED.replace("+", "%20"), "There is no problem type " + TEXT);
        shows(browser, "/" + QUOTED.replace("+", "%20"), "HTTP status 404");
        browser.open("/sign-in");
        browser.fill("#username", TEXT);
        browser.fill("#password", TEXT);
        browser.press("main button");
        browser.assertNothingRan();
        assertThat(browser.find("#username").getDomProperty("value")).isEqualTo(TEXT);
    }

    private static void storedRulesAreTexts(Browser browser) {
        Api.make(
                COORDINATOR,
                "/api/release-rules",
                HostileEvidence.json(Map.ofEntries(
                        Map.entry("jurisdiction", LAW),
                        Map.entry("kind", "statute"),
                        Map.entry("scientificName", "Testudo hostilis"),
                        Map.entry("appliesTo", "adult"),
                        Map.entry("appliesDefinition", "definition" + TEXT),
                        Map.entry("test", "foundPlaceFirst"),
                        Map.entry("orderOfPreference", List.of("order" + TEXT)),
                        Map.entry("allowedGrounds", List.of(Map.of("key", "key" + TEXT, "words", "ground" + TEXT))),
                        Map.entry("consents", "consents" + TEXT),
                        Map.entry("words", "words" + TEXT),
                        Map.entry("source", "source" + TEXT),
                        Map.entry("readOn", "2020-01-01"),
                        Map.entry("reviewBy", "2090-01-01"),
                        Map.entry("validFrom", "2020-01-01"))));
        browser.open("/release-rules?jurisdiction=" + LAW);
        browser.assertNothingRan();
        assertThat(browser.words())
                .contains(List.of("definition", "order", "key", "ground", "consents", "words", "source").stream()
                        .map(field -> field + TEXT)
                        .toArray(String[]::new));
        browser.assertUsable("hostile-rules");
        shows(browser, "/release-rules?jurisdiction=" + QUOTED, "None have been entered of " + TEXT);
    }

    private static void typedOnesOfRulesComeBackAsTexts(Browser browser) {
        browser.open("/release-rules?jurisdiction=" + LAW);
        browser.script("document.querySelector('#act-enter').open = true;"
                + "document.querySelectorAll('[required]').forEach(i => i.removeAttribute('required'));"
                + "return true;");
        List<String> fields = Stream.of(
                        "jurisdiction",
                        "scientificName",
                        "appliesDefinition",
                        "greatestDistanceMetres",
                        "orderOfPreference",
                        "allowedGrounds",
                        "consents",
                        "words",
                        "source")
                .map(field -> "enter-" + field)
                .toList();
        comeBackRefused(browser, fields, "form[method=post][action='/release-rules'] button");
        browser.assertUsable("hostile-rule-form");
    }

    /** Names of a park and of a site, and whom to ask, drawn and in words. */
    private static void storedOnesOfAnAreaAreTexts(Browser browser) {
        double latitude = World.LATITUDE;
        double longitude = 149.52;
        String incident = World.call("Testudo hostilis", longitude, "").getString("incidentId");
        String found = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Testudo hostilis"},
                         "foundAt":"2026-01-10T02:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(incident, World.shared().rescuer))
                .getString("number");
        ReleaseWorld.site("site" + TEXT, LAW, latitude + 0.008, longitude, "hostile");
        double west = longitude + 0.002;
        double south = latitude + 0.002;
        Api.make(
                COORDINATOR,
                "/api/land-areas",
                HostileEvidence.json(Map.of(
                        "kind",
                        "protectedArea",
                        "name",
                        "park" + TEXT,
                        "source",
                        "gazette" + TEXT,
                        "from",
                        "2020-01-01",
                        "geometry",
                        Map.of(
                                "type",
                                "Polygon",
                                "coordinates",
                                List.of(List.of(
                                        List.of(west, south),
                                        List.of(west + 0.005, south),
                                        List.of(west + 0.005, south + 0.005),
                                        List.of(west, south + 0.005),
                                        List.of(west, south)))))));
        browser.open("/release-area?withinMetres=1500&jurisdiction=" + LAW + "&caseId=" + found);
        browser.assertNothingRan();
        assertThat(browser.words()).contains("site" + TEXT, "Park or reserve: park" + TEXT + " (gazette" + TEXT + ")");
        assertThat(browser.list("svg .asked")).isNotEmpty();
        browser.assertUsable("hostile-area");
        shows(
                browser,
                "/release-area?caseId=" + QUOTED + "&jurisdiction=" + QUOTED + "&withinMetres=" + QUOTED,
                "This cannot be read: " + TEXT);
        assertThat(browser.find("#ask-jurisdiction").getDomProperty("value")).isEqualTo(TEXT);
    }

    private static void signIn(Browser browser) {
        signIn(browser, "test-admin");
    }

    private static void signIn(Browser browser, String username) {
        browser.fill("#username", username);
        browser.fill("#password", Api.PASSWORD);
        browser.press("main button");
        assertThat(browser.path()).isNotEqualTo("/sign-in");
    }

    private static void storedOnesAreTexts(Browser browser, String run) {
        shows(browser, "/hotspots", TEXT);
        assertThat(browser.list("#seasonWindow option, #taxonGroup option"))
                .filteredOn(option -> option.getDomProperty("textContent").contains(TEXT))
                .hasSize(2);
        shows(browser, "/hotspots/" + run, TEXT);
        assertThat(browser.text("table.ranked th[scope=row]")).isEqualTo("0" + TEXT);
        browser.await("the map is drawn", () -> !browser.list(".rank-label").isEmpty());
        browser.find("button.find").click();
        assertThat(browser.text("#told")).contains("0" + TEXT);
        browser.assertNothingRan();
        browser.assertUsable("hostile-run");
        shows(browser, "/account", TEXT);
        browser.assertUsable("hostile-account");
        // What the API says of the same, opened in a browser, is no page
        shows(browser, "/api/taxon-groups", "pwned");
        shows(browser, "/api/hotspot-runs/" + run + "/result", "pwned");
        shows(browser, "/api/road-networks/current/links", "pwned");
    }

    private static void storedOnesOfWorksAreTexts(Browser browser, String works) {
        shows(browser, "/works", TEXT);
        assertThat(browser.list("table th[scope=row]"))
                .extracting(cell -> cell.getDomProperty("textContent"))
                .contains(TEXT);
        assertThat(browser.list("td[data-head=Road]"))
                .extracting(cell -> cell.getDomProperty("textContent"))
                .contains("0" + TEXT);
        browser.assertUsable("hostile-works");
        browser.open("/works/" + works + "?taxonGroup=hostile&yearsBefore=1&yearsAfter=1");
        browser.assertNothingRan();
        assertThat(browser.find("h1").getDomProperty("textContent")).isEqualTo("Did it help? " + TEXT);
        assertThat(browser.words()).contains("effort: effort" + TEXT, "publicity: publicity" + TEXT);
        browser.assertUsable("hostile-effect");
        shows(
                browser,
                "/stretch?road=0" + QUOTED + "&fromChainageMetres=4000&toChainageMetres=6000&yearFrom="
                        + HostileEvidence.year() + "&yearTo=" + HostileEvidence.year() + "&taxonGroup=hostile",
                "collisions were reported on 0" + TEXT);
        assertThat(browser.find("#road").getDomProperty("value")).isEqualTo("0" + TEXT);
        browser.assertUsable("hostile-stretch");
        shows(
                browser,
                "/seasons?taxonGroup=hostile&periodFrom=" + HostileEvidence.year() + "-01-01&periodTo="
                        + HostileEvidence.year() + "-12-31&owner=" + QUOTED,
                "on the roads of " + TEXT);
        assertThat(browser.find("h2#first").getDomProperty("textContent")).isEqualTo(TEXT);
        browser.assertUsable("hostile-seasons");
        shows(browser, "/api/works", "pwned");
        shows(browser, "/api/works/" + works, "pwned");
        shows(browser, "/api/works/" + works + "/effect?yearsBefore=1&yearsAfter=1", "pwned");
    }

    private static void typedOnesOfWorksComeBackAsTexts(Browser browser) {
        browser.open("/works");
        browser.script("document.querySelectorAll('form.ask input').forEach(i => i.removeAttribute('required'));"
                + "return true;");
        List<String> fields = List.of(
                "words",
                "road",
                "fromChainageMetres",
                "toChainageMetres",
                "endsMetres",
                "effortChange",
                "publicityChange");
        comeBackRefused(browser, fields, "form.ask button");
        shows(
                browser,
                "/stretch?road=" + QUOTED + "&fromChainageMetres=" + QUOTED + "&costSource=" + QUOTED + "&worksKind="
                        + QUOTED,
                "This cannot be read: " + TEXT);
        assertThat(browser.find("#costSource").getDomProperty("value")).isEqualTo(TEXT);
        shows(browser, "/seasons?owner=" + QUOTED + "&periodFrom=" + QUOTED + "&taxonGroup=" + QUOTED, "Not answered.");
        assertThat(browser.find("#owner").getDomProperty("value")).isEqualTo(TEXT);
        shows(browser, "/works?cursor=" + QUOTED, "This is no identifier.");
        shows(browser, "/works/" + QUOTED.replace("+", "%20"), "This is no identifier.");
    }

    private static void typedOnesComeBackAsTexts(Browser browser) {
        browser.open("/hotspots");
        browser.run("document.querySelectorAll('form.ask details').forEach(one => one.open = true);");
        browser.script("document.querySelectorAll('form.ask input').forEach(i => i.removeAttribute('required'));"
                + "return true;");
        browser.fill("#owner", TEXT);
        browser.fill("#reachMetres", TEXT);
        browser.fill("#seed", TEXT);
        browser.press("form.ask button");
        browser.assertNothingRan();
        assertThat(browser.text("[role=alert]")).contains("Not started.");
        assertThat(browser.find("#owner").getDomProperty("value")).isEqualTo(TEXT);
        assertThat(browser.find("#seed").getDomProperty("value")).isEqualTo(TEXT);
        browser.open("/account");
        browser.fill("#name", TEXT);
        browser.fill("#scopes", TEXT);
        browser.press("form[action='/account/tokens'] button");
        browser.assertNothingRan();
        assertThat(browser.text("[role=alert]")).contains("Nothing was changed.");
        browser.open("/accounts");
        browser.fill("#username", TEXT);
        browser.press("form[action='/accounts'] button");
        browser.assertNothingRan();
        assertThat(browser.text("[role=alert]")).contains("Nothing was changed.");
        shows(browser, "/hotspots?cursor=" + QUOTED, "This is no identifier.");
        shows(browser, "/hotspots/" + QUOTED.replace("+", "%20"), "This is no identifier.");
    }

    private static void comeBackRefused(Browser browser, List<String> fields, String button) {
        fields.forEach(field -> browser.fill("#" + field, TEXT));
        browser.press(button);
        browser.assertNothingRan();
        assertThat(browser.text("[role=alert]")).contains("Not entered.", "This cannot be read: " + TEXT);
        for (String field : fields) {
            assertThat(browser.find("#" + field).getDomProperty("value"))
                    .as(field)
                    .isEqualTo(TEXT);
        }
    }

    private static void shows(Browser browser, String path, String words) {
        browser.open(path);
        browser.assertNothingRan();
        assertThat(browser.words()).as("words of " + path).contains(words);
    }

    private static void nameRegion(String name) {
        Api.as(ADMIN)
                .body(HostileEvidence.json(Map.of(
                        "name",
                        name,
                        "timeZone",
                        "Australia/Sydney",
                        "countryCode",
                        "AU",
                        "south",
                        -32,
                        "west",
                        149,
                        "north",
                        -29,
                        "east",
                        152,
                        "demo",
                        false)))
                .put("/api/region")
                .then()
                .statusCode(200);
    }

    /** The region as it is entered: what the server adds to it is left out. */
    private static String told(String view) {
        Map<String, Object> known = Json.from(view).getMap("$");
        known.keySet().retainAll(List.of("name", "timeZone", "countryCode", "south", "west", "north", "east", "demo"));
        return HostileEvidence.json(known);
    }
}
