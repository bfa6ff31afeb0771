package org.culvert.web.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.web.records.RecordForms.answer;
import static org.culvert.web.records.RecordForms.hold;
import static org.culvert.web.records.RecordForms.path;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Old records by plain forms, from the file to the register. */
@QuarkusTest
class RecordPageResourceTest {
    private RecordForms forms;

    @BeforeEach
    void layTheWorld() {
        World.shared();
        forms = new RecordForms(COORDINATOR);
    }

    private static String table(String note, String... rows) {
        return "date,road,km,species,note\n" + String.join("," + note + "\n", rows) + "," + note + "\n";
    }

    /** A file of its own, whatever other tests brought. */
    private static String note() {
        return "note " + UUID.randomUUID();
    }

    private static String trial(String path) {
        return path.substring("/records/trials/".length());
    }

    @Test
    void aFileGoesThroughAllStepsByForms() {
        String file = forms.brought(
                "council 1931.csv",
                table(
                        note(),
                        "1931-03-04,Mill Road,3.4,swamp wallaby",
                        "1931-03-11,Mill Road,3.9,swamp walaby",
                        "1931-02-31,Mill Road,4.2,swamp wallaby",
                        "1931-04-01,Mill Road,4.4,cat"));
        assertThat(forms.page("/records"))
                .contains("council 1931.csv", "looked through; how it is read is not decided", file);

        String page = forms.page(file);
        assertThat(page)
                .contains(
                        "How council 1931.csv is read",
                        "Rows below the headings: 4",
                        "What happened to the animals of this file?",
                        "<td>1931-03-04</td><td>Mill Road</td>",
                        "Its heading says so.",
                        "swamp walaby");
        Map<String, List<String>> form = forms.shown(file);
        assertThat(form.get("holds")).startsWith("0:day", "1:road", "2:chainage", "3:scientificName");

        // Nothing is decided while something is open, and what was chosen stays
        form.put("name", List.of("of the council"));
        form.put("act", List.of("try"));
        String refused = forms.send(file, form).statusCode(400).extract().asString();
        assertThat(refused)
                .contains("It is open: What happened to the animals of this file?", "id=\"wrong-question-cause\"")
                .contains("value=\"of the council\"");
        assertThat((Object) Api.get(COORDINATOR, "/api/record-files/" + file.substring("/records/".length()))
                        .get("readingId"))
                .isNull();

        form = RecordForms.read(refused);
        answer(form, "cause", "collisionWithVehicle");
        form.put("act", List.of("try"));
        String trial = path(forms.send(file, form));
        String report = forms.ended(trial);
        assertThat(report)
                .contains(
                        "Nothing of it is entered.",
                        "1 right, ",
                        " apart, ",
                        "a day that cannot be read",
                        "a domestic animal")
                .contains("1931-02-31,Mill Road,4.2", "Read as:", "swamp walaby")
                .contains("/api/record-trials/" + trial(trial) + "/rest.csv");
        assertThat(forms.page(trial + "?verdict=refused"))
                .contains("1931-02-31,Mill Road,4.2")
                .doesNotContain("<code>1931-03-04");
        assertThat(forms.page(trial + "?finding=domestic"))
                .contains("1931-04-01,Mill Road,4.4")
                .doesNotContain("<code>1931-02-31");
        assertThat(forms.page("/records")).contains("tried; nothing is entered yet");

        // All cannot be taken while one is refused; without a reason none
        String taking = trial + "/taking";
        assertThat(forms.send(taking, Map.of("which", "all", "oneIncident", "false", "reason", "their records"))
                        .statusCode(409)
                        .extract()
                        .asString())
                .contains("rows are refused", "value=\"their records\"");
        assertThat(forms.send(taking, Map.of("which", "good", "oneIncident", "false", "reason", " "))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("It was not done.");
        Map<String, String> good = Map.of(
                "key", "take-" + UUID.randomUUID(), "which", "good", "oneIncident", "false", "reason", "their records");
        assertThat(path(forms.send(taking, good))).isEqualTo(trial);
        assertThat(path(forms.send(taking, good))).as("sent twice").isEqualTo(trial);
        assertThat(forms.ended(trial)).contains("Rows taken in: 1.", "their records");
        assertThat(forms.page("/records")).contains("taken in, rows: 1");
        assertThat(forms.page(file))
                .contains("how it is read is decided for good")
                .doesNotContain("name=\"holds\"");
        assertThat(Api.as(COORDINATOR)
                        .get("/api/record-trials/" + trial(trial) + "/rest.csv")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("1931-02-31")
                .doesNotContain("1931-03-04");
    }

    @Test
    void wordsMeanWhatSomebodySaysAndOtherFilesOfTheKindAreProposedThat() {
        String heading = "date,road,km,species," + UUID.randomUUID() + "\n";
        String file = forms.brought("words.csv", heading + "1932-05-02,Mill Road,3.1,the grey one," + note() + "\n");
        Map<String, List<String>> form = forms.shown(file);
        answer(form, "cause", "collisionWithVehicle");
        form.put("act", List.of("try"));
        int at = form.get("word").indexOf("animals:the grey one");
        form.get("other").set(at, "a beast that nobody has heard of");
        assertThat(forms.send(file, form).statusCode(400).extract().asString())
                .contains("No kind of the register is called so.", "value=\"a beast that nobody has heard of\"");
        form.get("other").set(at, "Wallabia bicolor");
        form.put("name", List.of("grey ones"));
        assertThat(forms.ended(path(forms.send(file, form)))).contains("1 right, 0 in doubt, 0 apart, 0 refused");

        String next =
                forms.brought("more words.csv", heading + "1932-06-02,Mill Road,3.6,the grey one," + note() + "\n");
        assertThat(forms.page(next)).contains("was read as “grey ones”", next + "?former=yes");
        Map<String, List<String>> filled = forms.shown(next + "?former=yes");
        assertThat(filled.get("meaning").get(filled.get("word").indexOf("animals:the grey one")))
                .startsWith("taxon:");
        assertThat(filled.get("answer").get(filled.get("question").indexOf("cause")))
                .isEqualTo("collisionWithVehicle");
    }

    @Test
    void aTextThatIsTakenApartOtherwiseIsLookedAtAgain() {
        String file = forms.brought(
                "bars.csv",
                "day|place, as told|km\n1933-01-02|here, there|1\n1933-01-03|there, here|2\n" + note() + "\n");
        Map<String, List<String>> form = forms.shown(file);
        form.put("separator", List.of("comma"));
        form.put("act", List.of("try"));
        String page = forms.send(file, form).statusCode(200).extract().asString();
        assertThat(page).contains("The text is taken apart otherwise now.", "<th scope=\"col\">day|place</th>");
        form.put("headingRow", List.of("ninety"));
        assertThat(forms.send(file, form).statusCode(400).extract().asString())
                .contains("No headings stand there.", "id=\"wrong-text-headingRow\"", "value=\"ninety\"");
    }

    @Test
    void twoColumnsDoNotHoldTheSameAndAnotherColumnAsksItsOwnQuestions() {
        String file = forms.brought(
                "two.csv", "date,how far,far\n1934-01-02,3,4\n1934-01-09,3,5\n1934-01-16,7," + note() + "\n");
        Map<String, List<String>> form = forms.shown(file);
        answer(form, "cause", "unknown");
        hold(form, 1, "chainage");
        hold(form, 2, "chainage");
        form.put("act", List.of("try"));
        assertThat(forms.send(file, form).statusCode(400).extract().asString())
                .contains("Two columns hold that.", "id=\"wrong-column-2\"");
        hold(form, 2, "");
        assertThat(forms.send(file, form).statusCode(400).extract().asString())
                .contains("It is open: In what are numbers under", "id=\"answer-chainageUnit\"");
    }

    @Test
    void whatIsNoTableIsRefusedBesideTheForm() {
        String key = UUID.randomUUID().toString();
        assertThat(forms.bring("book.xlsx", new byte[] {'P', 'K', 3, 4, 5}, key)
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("a workbook or an archive", "save the sheet as CSV");
        assertThat(forms.bring("", new byte[0], key).statusCode(400).extract().asString())
                .contains("No file was chosen.");
        assertThat(forms.bring("empty.csv", new byte[0], key)
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("The file is empty.");
        byte[] octets = table(note(), "1935-01-02,Mill Road,3.4,swamp wallaby").getBytes(StandardCharsets.UTF_8);
        String first = path(forms.bring("once.csv", octets, key));
        assertThat(path(forms.bring("once.csv", octets, key))).isEqualTo(first);
        assertThat(forms.bring("once.csv", "another".getBytes(StandardCharsets.UTF_8), key)
                        .statusCode(422)
                        .extract()
                        .asString())
                .contains("This form was sent before");
        assertThat(forms.bring("again.csv", octets, UUID.randomUUID().toString())
                        .statusCode(409)
                        .extract()
                        .asString())
                .contains("The same file is there already");
    }

    @Test
    void aFileIsCalledOffAndAnAdministratorSeesWhy() {
        String file = forms.brought("not wanted.csv", table(note(), "1936-01-02,Mill Road,3.4,swamp wallaby"));
        assertThat(path(forms.send(file + "/calling-off", Map.of("reason", "the wrong year"))))
                .isEqualTo("/records");
        var administrator = new RecordForms(ADMIN);
        assertThat(administrator.page("/records")).contains("called off: the wrong year");
        assertThat(administrator.page(file))
                .contains("It was called off: the wrong year")
                .doesNotContain("1936-01-02");
        assertThat(forms.send(file + "/trials", Map.of())
                        .statusCode(409)
                        .extract()
                        .asString())
                .contains("called off");
        assertThat(Api.as(ADMIN).get("/").then().statusCode(200).extract().asString())
                .contains("href=\"/records\"");
    }

    @Test
    void formsOfOthersAreRefusedAndOtherRolesSeeNothing() {
        Api.as(DISPATCHER).get("/records").then().statusCode(403);
        Api.as(COORDINATOR)
                .contentType("multipart/form-data; boundary=b")
                .body(
                        "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\na,b\r\n--b--\r\n")
                .post("/records")
                .then()
                .statusCode(403);
    }

    @Test
    void germanIsSpokenToWhoeverAsksForIt() {
        String file = forms.brought("deutsch.csv", table(note(), "1937-01-02,Mill Road,3.4,swamp wallaby"));
        assertThat(Api.as(COORDINATOR)
                        .header("Accept-Language", "de")
                        .get(file)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("Was jede Spalte enthält", "Kilometer der Straße", "lang=\"de\"");
    }
}
