package org.culvert.web.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.sight.SightTable;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.ActForms;
import org.culvert.web.forms.FieldShape;
import org.culvert.web.words.ActExplainedWords;
import org.culvert.web.words.ActWords;
import org.culvert.web.words.ChoiceWords;
import org.culvert.web.words.FieldWords;
import org.culvert.web.words.HintWords;
import org.culvert.web.words.PurposeWords;
import org.culvert.web.words.RecordFieldWords;
import org.culvert.web.words.SheetWords;
import org.junit.jupiter.api.Test;

/** Settings by forms: the rights, bodies and refusals of the API. */
@QuarkusTest
class SettingsPageResourceTest {
    @Inject
    Sheets sheets;

    @Inject
    ActForms forms;

    private static String page(String role, String path) {
        return Api.as(role)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    /** @param told fields and values by turns */
    private static Answer send(String role, String path, String... told) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
        Request request = Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString());
        for (int i = 0; i < told.length; i += 2) {
            request = request.formParam(told[i], told[i + 1]);
        }
        return request.post(path).then();
    }

    private static String hidden(String html, String name) {
        Matcher found =
                Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(html);
        assertThat(found.find()).as(name).isTrue();
        return found.group(1).replace("&quot;", "\"").replace("&#34;", "\"");
    }

    /** A page asks for the rights of operations; one that the table does not know would be open to nobody. */
    @Test
    void everyActIsAnOperationOfTheApi() {
        Set<String> operations = SightTable.load().operations();
        for (Sheet sheet : sheets.all()) {
            assertThat(operations).as(sheet.name()).contains(sheet.reads());
            for (SheetAct<?> one : sheet.acts()) {
                Act<?> act = one.act();
                assertThat(operations).as(sheet.name() + " " + act.name()).contains(act.operation());
            }
        }
        assertThat(sheets.all().size()).isGreaterThan(30);
    }

    /** Every kind that a coordinator or administrator writes has its form, or is told here to have another page. */
    @Test
    void everyKindThatIsWrittenHasAForm() {
        SightTable table = SightTable.load();
        Set<String> covered = new TreeSet<>();
        sheets.all()
                .forEach(sheet ->
                        sheet.acts().forEach(one -> covered.add(one.act().operation())));
        Pattern kinds =
                Pattern.compile("(POST|PUT|PATCH) /api/(time-limits|missed-task-rules|referrals|species-listings|"
                        + "return-forms|retention-rules|notifiable-conditions|syndromes|alert-thresholds|vaccination-rules|"
                        + "keeping-rules|incubation-facts|age-cautions|species-facts|release-sites|land-areas|taxon-groups|taxa|"
                        + "taxon-synonyms|cautions|season-windows|road-surveys|region|disclosure-settings|agreements|"
                        + "event-subscriptions|erasures|organisations|members|authorisations|ordered-authorisations|"
                        + "vaccinations|absences|carer-profiles|clinic-profiles)(/.*)?");
        List<String> missing = table.operations().stream()
                .filter(operation -> kinds.matcher(operation).matches())
                .filter(operation -> table.rolesOf(operation).contains(COORDINATOR)
                        || table.rolesOf(operation).contains(ADMIN))
                .filter(operation -> !covered.contains(operation))
                .filter(operation -> !operation.matches(".*/(files|approvals|calendars.*)"))
                .toList();
        assertThat(missing).isEmpty();
    }

    @Test
    void everythingHasWordsInBothLanguages() throws IOException {
        List<String> missing = new ArrayList<>();
        for (Sheet sheet : sheets.all()) {
            require(missing, SheetWords.class, "sheets", sheet.key());
            require(missing, PurposeWords.class, "purposes", sheet.key());
            for (SheetAct<?> one : sheet.acts()) {
                Act<?> act = one.act();
                require(missing, ActWords.class, "acts", act.key());
                require(missing, ActExplainedWords.class, "explained", act.key());
                for (FieldShape shape : forms.shapes(act)) {
                    require(missing, FieldWords.class, "fields", sheet.called(shape.last()));
                    if (!ActForms.hintName(shape).isEmpty()) {
                        require(missing, HintWords.class, "hints", ActForms.hintName(shape));
                    }
                    for (String value : shape.values()) {
                        require(missing, ChoiceWords.class, "choices", value);
                    }
                }
            }
        }
        assertThat(new TreeSet<>(missing)).isEmpty();
    }

    private static void require(List<String> missing, Class<?> bundle, String name, String key) throws IOException {
        if (bundle == FieldWords.class
                && Arrays.stream(RecordFieldWords.class.getMethods())
                        .anyMatch(method -> method.getName().equals(key))) {
            require(missing, RecordFieldWords.class, "recordFields", key);
            return;
        }
        if (Arrays.stream(bundle.getMethods())
                .noneMatch(method -> method.getName().equals(key))) {
            missing.add(name + "." + key);
        }
        try (InputStream file = bundle.getResourceAsStream("/messages/" + name + "_de.properties")) {
            var german = new Properties();
            german.load(file);
            if (!german.containsKey(key)) {
                missing.add(name + "_de." + key);
            }
        }
    }

    private static String[] limit(String jurisdiction) {
        return new String[] {
            "jurisdiction", jurisdiction,
            "kind", "advice",
            "binds", "anyone",
            "starts", "found",
            "ends", "handedToClinic",
            "ends", "caseEnded",
            "length", "36",
            "lengthUnit", "hours",
            "warnBeforeHours", "6",
            "exceptScientificNames", "Vombatus ursinus\r\nPhascolarctos cinereus",
            "words", "Made for a test <b>of a form</b>",
            "source", "made for a test",
            "readOn", "2026-01-01",
            "reviewBy", "2026-02-01",
            "validFrom", "2020-01-01",
        };
    }

    @Test
    void aLimitIsEnteredAndReadAgainByForms() {
        World.shared();
        String whose = "XS-" + (char) ('A' + Math.floorMod(UUID.randomUUID().hashCode(), 26))
                + Math.floorMod(UUID.randomUUID().hashCode(), 90);
        String to = send(COORDINATOR, "/settings/time-limits/entry", limit(whose))
                .statusCode(303)
                .extract()
                .header("Location");
        String id = to.substring(to.indexOf("#i-") + 3);
        var made = Api.get(COORDINATOR, "/api/time-limits/" + id);
        assertThat(made.getString("jurisdiction")).isEqualTo(whose);
        assertThat(made.getList("ends")).isEqualTo(List.of("handedToClinic", "caseEnded"));
        assertThat(made.getList("exceptScientificNames"))
                .isEqualTo(List.of("Vombatus ursinus", "Phascolarctos cinereus"));
        assertThat(made.getInt("length")).isEqualTo(36);
        String shown = page(RESCUER, "/settings/time-limits");
        assertThat(shown)
                .contains("id=\"i-" + id + "\"", "Made for a test &lt;b&gt;of a form&lt;/b&gt;")
                .doesNotContain("/settings/time-limits/reviews");
        // Its day to be looked at again is over
        assertThat(page(COORDINATOR, "/settings/time-limits")).contains("id=\"s-due\"");
        String review = "/settings/time-limits/reviews";
        String form = page(COORDINATOR, review + "?of=" + id);
        String[] again = {
            "act.of",
            id,
            "act.seen",
            hidden(form, "act.seen"),
            "readOn",
            "2026-11-01",
            "reviewBy",
            "2090-01-01",
            "reason",
            "read again"
        };
        send(COORDINATOR, review, again).statusCode(303);
        assertThat(Api.get(COORDINATOR, "/api/time-limits/" + id).getString("reviewBy"))
                .isEqualTo("2090-01-01");
        // The form showed it as it was before
        send(COORDINATOR, review, again).statusCode(412);
    }

    @Test
    void cautionsStandInFull() {
        World.shared();
        String words = "Words " + java.util.UUID.randomUUID();
        Api.as(COORDINATOR)
                .body("[{\"taxonGroup\":\"turtles\",\"audience\":\"caller\",\"words\":\"" + words
                        + "\",\"source\":\"made for a test\",\"readOn\":\"2026-02-03\"}]")
                .post("/api/cautions")
                .then()
                .statusCode(204);
        assertThat(page(COORDINATOR, "/settings/cautions")).contains(words, "made for a test", "3 Feb 2026");
    }

    @Test
    void whatIsWrongStandsBesideItsFieldAndWhatWasTypedStays() {
        World.shared();
        String[] told = limit("nowhere");
        told[13] = "many";
        String refused = send(COORDINATOR, "/settings/time-limits/entry", told)
                .statusCode(400)
                .extract()
                .asString();
        assertThat(refused)
                .contains("value=\"many\"")
                .containsPattern("(?s)id=\"f-length\"[^>]*aria-invalid=\"true\"")
                .contains("id=\"f-length-wrong\"")
                .contains("Made for a test &lt;b&gt;");
        told[13] = "36";
        assertThat(send(COORDINATOR, "/settings/time-limits/entry", told)
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("must be an ISO 3166 code or network", "id=\"f-jurisdiction-wrong\"", "value=\"nowhere\"")
                .containsPattern("name=\"ends\" value=\"caseEnded\" checked");
    }

    /** A group of animals goes by its key; the key by which a form is taken once is another. */
    @Test
    void aBodyMayHaveAKeyOfItsOwn() {
        World.shared();
        assertThat(page(COORDINATOR, "/settings/taxon-groups/entry")).contains("id=\"f-key\" name=\"body.key\"");
        String refused = send(COORDINATOR, "/settings/taxon-groups/entry", "body.key", "Not A Key")
                .statusCode(400)
                .extract()
                .asString();
        assertThat(refused).contains("id=\"f-key-wrong\"", "value=\"Not A Key\"");
    }

    @Test
    void nobodyDoesMoreThanByTheApi() {
        World.shared();
        Api.as(RESCUER).get("/settings/time-limits/entry").then().statusCode(403);
        send(RESCUER, "/settings/time-limits/entry", limit("network")).statusCode(403);
        Api.as(DISPATCHER).get("/settings/retention-rules").then().statusCode(403);
        Api.as(COORDINATOR).get("/settings/region/settling").then().statusCode(403);
        Api.as(COORDINATOR).get("/settings/nothing-known").then().statusCode(404);
        Api.as(COORDINATOR).get("/settings/time-limits/nothing").then().statusCode(404);
        assertThat(page(DISPATCHER, "/settings"))
                .doesNotContain("retention-rules")
                .contains("/settings/time-limits");
        assertThat(Request.given().withoutRedirects().get("/settings").statusCode())
                .isIn(303, 401);
    }

    @Test
    void whatIsLeftAloneInACorrectionStays() {
        World.shared();
        String name = "Organisation " + UUID.randomUUID();
        String id =
                Api.make(COORDINATOR, "/api/organisations", """
                {"kind":"network","name":"%s","latitude":-30.5,"longitude":150.25,"xRay":false,"surgery":false}
                """.formatted(name)).getString("id");
        String path = "/settings/organisations/correction";
        String form = page(COORDINATOR, path + "?of=" + id);
        assertThat(form).contains("value=\"" + name + "\"", "value=\"150.25\"");
        send(
                        COORDINATOR,
                        path,
                        "act.of",
                        id,
                        "act.seen",
                        hidden(form, "act.seen"),
                        "name",
                        name + " the second",
                        "latitude",
                        "",
                        "longitude",
                        "",
                        "xRay",
                        "true",
                        "surgery",
                        "false",
                        "reason",
                        "it moved")
                .statusCode(303);
        var now = Api.get(COORDINATOR, "/api/organisations/" + id);
        assertThat(now.getString("name")).isEqualTo(name + " the second");
        assertThat(now.getBoolean("xRay")).isTrue();
        assertThat((Object) now.get("latitude")).isNull();
    }

    @Test
    void aSurgeTellsItsPlacesInWords() {
        World world = World.shared();
        String name = "The fire by Mill Road " + UUID.randomUUID();
        String[] told = {
            "name", name,
            "kind", "fire",
            "from", "2026-01-01T08:00",
            "tentWords", "on the oval",
            "tent", "Mill Road 5.2 ± 80 m",
            "holderMemberId", world.rescuer
        };
        String[] nowhere = told.clone();
        nowhere[9] = "Nowhere Road km 3";
        assertThat(send(COORDINATOR, "/settings/surges/entry", nowhere)
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("id=\"f-tent-wrong\"", "no road called Nowhere Road", "value=\"Nowhere Road km 3\"");
        send(COORDINATOR, "/settings/surges/entry", told).statusCode(303);
        String surge = Api.get(COORDINATOR, "/api/surges").getString("find { it.name == '" + name + "' }.id");
        assertThat(Api.get(COORDINATOR, "/api/surges/" + surge).getDouble("coordinateUncertaintyInMeters"))
                .isGreaterThanOrEqualTo(80);
        Api.make(COORDINATOR, "/api/surges/" + surge + "/sectors", """
                {"code":"B","words":"the creek","area":{"type":"Polygon","coordinates":
                 [[[150.03,-30.51],[150.05,-30.51],[150.05,-30.49],[150.03,-30.49],[150.03,-30.51]]]}}
                """);
        String page = page(COORDINATOR, "/settings/surges");
        assertThat(page).contains("B, the creek, within 1", "m of -30.5000, 150.0400");
        assertThat(page).doesNotContain("150.03, -30.51", surge + ",");
    }

    @Test
    void wordsThatLookLikeADayAreWords() {
        World world = World.shared();
        String surge = Api.make(COORDINATOR, "/api/surges", """
                        {"name":"2026-02-30","kind":"flood","from":"2026-01-01T00:00:00Z","tentWords":"2026-02-30T10:00:00Z",
                         "holderMemberId":"%s"}
                        """.formatted(world.rescuer))
                .getString("id");
        Api.make(COORDINATOR, "/api/surges/" + surge + "/sectors", "{\"code\":\"A\",\"words\":\"--02-30\"}");
        assertThat(page(COORDINATOR, "/settings/surges")).contains("2026-02-30T10:00:00Z", "--02-30");
    }

    @Test
    void manyAnimalsOfASurgeAreTakenInByALineEach() {
        World world = World.shared();
        String surge = Api.make(COORDINATOR, "/api/surges", """
                        {"name":"The flood by the lines","kind":"flood","from":"2026-01-01T00:00:00Z","tentWords":"on the oval",
                         "holderMemberId":"%s"}
                        """.formatted(world.rescuer))
                .getString("id");
        Api.make(COORDINATOR, "/api/surges/" + surge + "/sectors", "{\"code\":\"A\",\"words\":\"a hill\"}");
        String lines = "A | alive | A-7 | a turtle | immediate | shell split\nA | dead || a wallaby";
        assertThat(send(
                                COORDINATOR,
                                "/settings/surges/many-intakes",
                                "act.of",
                                surge,
                                "animals",
                                lines + "\nA | asleep")
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("A | asleep", "f-animals-wrong", "Alive or dead (alive, dead)");
        String intakes = "/api/surges/" + surge + "/intakes";
        assertThat(Api.get(COORDINATOR, intakes).getList("items"))
                .as("all or none")
                .isEmpty();
        send(COORDINATOR, "/settings/surges/many-intakes", "act.of", surge, "animals", lines)
                .statusCode(303);
        assertThat(Api.get(COORDINATOR, intakes).getList("items.temporaryNumber", String.class))
                .hasSize(2)
                .contains("A-7");
    }

    @Test
    void aYearIsAskedForByMonthsToo() {
        World.shared();
        String[] year = {
            "periodFrom", "2025-01-01", "periodTo", "2025-12-31", "plan", "decided for a test", "taxonGroups", "turtles"
        };
        assertThat(send(COORDINATOR, "/settings/annual-runs/entry", with(year, "seasons", "turtles | 10, 13"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("turtles | 10, 13", "f-seasons-wrong");
        assertThat(send(COORDINATOR, "/settings/annual-runs/entry", with(year, "seasons", "turtles | spring"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("are no months.", "f-seasons-wrong");
    }

    private static String[] with(String[] told, String field, String value) {
        String[] all = Arrays.copyOf(told, told.length + 2);
        all[told.length] = field;
        all[told.length + 1] = value;
        return all;
    }

    @Test
    void everyKindAndFormOpens() {
        World.shared();
        for (Sheet sheet : sheets.all()) {
            for (String role : List.of(COORDINATOR, ADMIN)) {
                if (SightTable.load().rolesOf(sheet.reads()).contains(role)) {
                    assertThat(page(role, "/settings/" + sheet.name()))
                            .as("only words of people")
                            .doesNotContain("<dd>null</dd>")
                            .doesNotContainPattern("<dd>[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}</dd>");
                    for (SheetAct<?> one : sheet.acts()) {
                        Act<?> act = one.act();
                        if (!act.ofOne()
                                && SightTable.load().rolesOf(act.operation()).contains(role)) {
                            page(role, "/settings/" + sheet.name() + "/" + act.name());
                        }
                    }
                }
            }
        }
        for (String kind : SheetFiles.KINDS) {
            assertThat(page(COORDINATOR, "/settings/files/" + kind)).contains("type=\"file\"");
        }
    }
}
