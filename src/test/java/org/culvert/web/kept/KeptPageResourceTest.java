package org.culvert.web.kept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

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
import org.culvert.care.CareWorld;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Pictures;
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
import org.culvert.web.words.KindWords;
import org.culvert.web.words.RecordFieldWords;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Records corrected, taken back and added to by forms: the rights, bodies and refusals of the API. */
@QuarkusTest
class KeptPageResourceTest {
    @Inject
    Wholes wholes;

    @Inject
    ActForms forms;

    private World world;

    @BeforeEach
    void layTheWorld() {
        world = World.shared();
    }

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
    private static Answer send(String role, String path, String of, String seen, String... told) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
        Request request = Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString())
                .formParam("act.of", of)
                .formParam("act.seen", seen);
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

    private String caseOfTheRescuer() {
        String incident = World.call("Chelodina longicollis", 150.0512, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis","sex":"unknown"},
                 "foundAt":"2026-01-04T02:00:00Z","holder":{"memberId":"%s"}}
                """.formatted(incident, world.rescuer))
                .getString("id");
    }

    @Test
    void anAnimalIsCorrectedAsItWasShownAndWhatIsLeftAloneStays() {
        String id = caseOfTheRescuer();
        String animal = Api.get(RESCUER, "/api/cases/" + id).getString("animal.id");
        String all = page(RESCUER, "/kept/cases/" + id);
        String path = "/kept/cases/" + id + "/animals/correction";
        assertThat(all)
                .contains(path + "?of=" + animal, "id=\"k-custody-links\"")
                .doesNotContain("/clock-extensions?of");
        String form = page(RESCUER, path + "?of=" + animal);
        assertThat(form).contains("value=\"Chelodina longicollis\"", "<option value=\"unknown\" selected>");
        String seen = hidden(form, "act.seen");
        String[] told = {
            "scientificName",
            "Chelodina longicollis",
            "identificationVerificationStatus",
            "seenByMember",
            "sex",
            "female",
            "naturalMarks",
            "a notch <b>left</b>",
            "reason",
            "seen again in daylight"
        };
        send(RESCUER, path, animal, seen, told).statusCode(303);
        var now = Api.get(RESCUER, "/api/cases/" + id);
        assertThat(now.getString("animal.sex")).isEqualTo("female");
        assertThat(now.getString("animal.naturalMarks")).isEqualTo("a notch <b>left</b>");
        assertThat(now.getString("animal.record.revisionReason")).isEqualTo("seen again in daylight");
        assertThat(page(RESCUER, "/kept/cases/" + id)).contains("a notch &lt;b&gt;left&lt;/b&gt;");
        // The form showed it as it was before: it comes back with what stands now
        String stale = send(RESCUER, path, animal, seen, told)
                .statusCode(412)
                .extract()
                .asString();
        assertThat(stale).contains("a notch &lt;b&gt;left&lt;/b&gt;", "role=\"alert\"");
        String unsaid = send(RESCUER, path, animal, hidden(stale, "act.seen"), "sex", "male", "reason", "")
                .statusCode(400)
                .extract()
                .asString();
        assertThat(unsaid).contains("id=\"f-reason-wrong\"", "<option value=\"male\" selected>");
        assertThat(Api.get(RESCUER, "/api/cases/" + id).getString("animal.sex")).isEqualTo("female");
    }

    @Test
    void aPlaceIsPutRightHoweverItIsSaid() {
        String id = caseOfTheRescuer();
        String cause = Api.get(RESCUER, "/api/cases/" + id).getString("cause");
        String path = "/kept/cases/" + id + "/cases/correction";
        String form = page(RESCUER, path + "?of=" + id);
        assertThat(form).contains("id=\"f-foundPlace\"", "hx-get=\"/places/reading?field=foundPlace");
        String wrong = send(
                        RESCUER,
                        path,
                        id,
                        hidden(form, "act.seen"),
                        "foundPlace",
                        "Nowhere Road km 3",
                        "foundAt",
                        hidden(form, "foundAt"),
                        "cause",
                        cause,
                        "dependentYoung",
                        "false",
                        "reason",
                        "the finder says")
                .statusCode(400)
                .extract()
                .asString();
        assertThat(wrong).contains("id=\"f-foundPlace-wrong\"", "value=\"Nowhere Road km 3\"");
        send(
                        RESCUER,
                        path,
                        id,
                        hidden(form, "act.seen"),
                        "foundPlace",
                        "Mill Road / River Lane",
                        "foundAt",
                        hidden(form, "foundAt"),
                        "cause",
                        cause,
                        "dependentYoung",
                        "false",
                        "reason",
                        "the finder says")
                .statusCode(303);
        var now = Api.get(RESCUER, "/api/cases/" + id);
        assertThat(now.getString("foundPlace.givenAs")).isEqualTo("crossingRoads");
        // What is shown there can be left as it stands
        form = page(RESCUER, path + "?of=" + id);
        send(
                        RESCUER,
                        path,
                        id,
                        hidden(form, "act.seen"),
                        "foundPlace",
                        hidden(form, "foundPlace"),
                        "foundAt",
                        hidden(form, "foundAt"),
                        "cause",
                        cause,
                        "dependentYoung",
                        "true",
                        "reason",
                        "seen again")
                .statusCode(303);
        assertThat(Api.get(RESCUER, "/api/cases/" + id).getString("foundPlace.id"))
                .isEqualTo(now.getString("foundPlace.id"));
        String incident = now.getString("incidentId");
        path = "/kept/incidents/" + incident + "/incidents/place";
        form = page(DISPATCHER, path + "?of=" + incident);
        send(DISPATCHER, path, incident, hidden(form, "act.seen"), "place", "Mill Road 5.2", "reason", "rang again")
                .statusCode(303);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getDouble("place.chainageMetres"))
                .isEqualTo(5200);
        Api.as(RESCUER).get(path + "?of=" + incident).then().statusCode(403);
    }

    /** What is near stays the desk's. */
    @Test
    void aPlaceIsReadWhileItIsTypedIntoAForm() {
        World.call("Chelodina longicollis", 150.0512, "");
        String reading =
                page(CARER, "/places/reading?field=foundPlace&list=f-foundPlace-places&foundPlace=Mill+Road+5.2");
        assertThat(reading)
                .contains("Mill Road, km 5.20", "<svg", "<datalist id=\"f-foundPlace-places\"")
                .doesNotContain("/desk/incidents/", "The call can be kept");
        Api.as(CARER)
                .get("/places/reading?field=foundPlace&list=%22x&foundPlace=a")
                .then()
                .statusCode(400);
    }

    @Test
    void whatWasEnteredInErrorIsTakenBackAndStaysOnRecord() {
        CareWorld care = new CareWorld();
        CareWorld.Patient turtle = care.patient(3);
        String id = turtle.caseId();
        String entry = Api.make(
                        CARER, "/api/cases/" + id + "/care-entries", "{\"kind\":\"note\",\"words\":\"of another\"}")
                .getString("id");
        String path = "/kept/cases/" + id + "/care-entries/withdrawal";
        String form = page(CARER, path + "?of=" + entry);
        assertThat(form).contains("of another");
        send(CARER, path, entry, hidden(form, "act.seen"), "reason", "the wrong animal")
                .statusCode(303);
        var told = Api.get(CARER, "/api/care-entries/" + entry);
        assertThat(told.getString("withdrawnBecause")).isEqualTo("the wrong animal");
        assertThat(page(CARER, "/kept/cases/" + id))
                .contains("the wrong animal")
                .doesNotContain(path + "?of=" + entry);
    }

    @Test
    void anAnimalsMotherIsChosenFromThoseThatMayBe() {
        CareWorld care = new CareWorld();
        String id = care.patient(3).caseId();
        var young = Api.get(COORDINATOR, "/api/cases/" + id);
        var mother = Api.make(RESCUER, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"Emydura macquarii","sex":"female"},
                 "foundAt":"%s","holder":{"memberId":"%s"}}
                """.formatted(
                        young.getString("incidentId"), young.getString("foundAt"), care.world.rescuer));
        String motherId = mother.getString("animal.id");
        String animal = young.getString("animal.id");
        String path = "/kept/cases/" + id + "/animals/correction";
        String form = page(COORDINATOR, path + "?of=" + animal);
        assertThat(form)
                .contains("<select id=\"f-motherId\"", "<option value=\"" + motherId + "\"")
                .doesNotContain("<option value=\"" + animal + "\"");
        String[] told = {
            "scientificName", "Emydura macquarii",
            "identificationVerificationStatus", young.getString("animal.identificationVerificationStatus"),
            "sex", "unknown",
            "motherId", motherId,
            "reason", "found in her pouch"
        };
        String[] stranger = told.clone();
        stranger[7] = UUID.randomUUID().toString();
        String seen = hidden(form, "act.seen");
        assertThat(send(COORDINATOR, path, animal, seen, stranger)
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains("id=\"f-motherId-wrong\"");
        send(COORDINATOR, path, animal, seen, told).statusCode(303);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("animal.motherId"))
                .isEqualTo(motherId);
        assertThat(page(COORDINATOR, path + "?of=" + animal))
                .contains(
                        "<option value=\"" + motherId + "\" selected>", "<dd>Case " + mother.getString("number") + ":");
    }

    @Test
    void visitsPhotographsAndGoingsOutAreChosenFromThoseOfTheCase() {
        CareWorld.Patient turtle = new CareWorld().patient(3);
        String id = turtle.caseId();
        String kept = "/kept/cases/" + id;
        String placement =
                Api.get(COORDINATOR, "/api/cases/" + id + "/placements").getString("[0].id");
        assertThat(page(COORDINATOR, kept + "/placements/correction?of=" + placement))
                .contains("<select id=\"f-visitId\"", "<option value=\"" + turtle.visitId() + "\" selected>");
        assertThat(page(COORDINATOR, kept + "/cases/correction?of=" + id)).contains("<select id=\"f-attendanceId\"");
        String entry = Api.make(
                        CARER, "/api/cases/" + id + "/care-entries", "{\"kind\":\"note\",\"words\":\"red at the rim\"}")
                .getString("id");
        String photograph = Api.make(
                        CARER,
                        "/api/cases/" + id + "/photographs",
                        Pictures.sent(
                                "image/png", Pictures.file("png", Pictures.bars(64, 48)), ",\"caption\":\"the rim\""))
                .getString("id");
        String path = kept + "/care-entries/correction";
        String form = page(CARER, path + "?of=" + entry);
        Matcher at = Pattern.compile("name=\"at\" value=\"([^\"]+)\"").matcher(form);
        assertThat(at.find()).isTrue();
        assertThat(form).containsPattern("<option value=\"" + photograph + "\">[^<]+, the rim</option>");
        send(
                        CARER,
                        path,
                        entry,
                        hidden(form, "act.seen"),
                        "words",
                        "red at the rim",
                        "photographId",
                        photograph,
                        "at",
                        at.group(1),
                        "reason",
                        "there is a picture")
                .statusCode(303);
        assertThat(Api.get(CARER, "/api/care-entries/" + entry).getString("photographId"))
                .isEqualTo(photograph);
    }

    /** A page that shows records leads to the forms of each that the asker has, and to no other. */
    @Test
    void pagesOfRecordsLeadStraightToTheirForms() {
        CareWorld.Patient turtle = new CareWorld().patient(3);
        String id = turtle.caseId();
        turtle.plan(new CareWorld().today, CareWorld.step("weigh", 0, 9, "daily", "grams", ""));
        Api.make(CARER, "/api/cases/" + id + "/care-entries", "{\"kind\":\"note\",\"words\":\"quiet\"}");
        Set<String> kinds = new TreeSet<>();
        for (String role : List.of(COORDINATOR, CLINIC, CARER, RESCUER)) {
            Set<String> direct = forms(page(role, "/cases/" + id));
            assertThat(direct).as(role).isNotEmpty().isSubsetOf(forms(page(role, "/kept/cases/" + id)));
            direct.forEach(form -> kinds.add(form.split("/")[4]));
        }
        assertThat(kinds)
                .contains(
                        "cases",
                        "animals",
                        "custody-links",
                        "visits",
                        "discharges",
                        "placements",
                        "aftercare-plans",
                        "care-entries",
                        "whereabouts");
        assertThat(forms(page(OFFICER, "/cases/" + id))).isEmpty();
        String incident = Api.get(COORDINATOR, "/api/cases/" + id).getString("incidentId");
        assertThat(forms(page(DISPATCHER, "/desk/incidents/" + incident)))
                .anyMatch(form -> form.contains("/calls/correction?of="))
                .isSubsetOf(forms(page(DISPATCHER, "/kept/incidents/" + incident)));
    }

    private static Set<String> forms(String html) {
        Set<String> forms = new TreeSet<>();
        Matcher found = Pattern.compile("href=\"(/kept/[^\"]+\\?of=[^\"]+)\"").matcher(html);
        while (found.find()) {
            forms.add(found.group(1));
        }
        return forms;
    }

    /** What does not stand on the first page of a kind has a way to it, and forms of its own. */
    @Test
    void recordsBeyondTheNewestAreReached() {
        String id = new CareWorld().patient(3).caseId();
        List<String> entries = new ArrayList<>();
        for (int i = 0; i <= KeptKind.MOST; i++) {
            entries.add(Api.make(
                            CARER,
                            "/api/cases/" + id + "/care-entries",
                            "{\"kind\":\"note\",\"words\":\"seen the " + i + " time\"}")
                    .getString("id"));
        }
        String oldest = entries.get(0);
        String first = page(CARER, "/kept/cases/" + id);
        assertThat(first).contains("seen the " + KeptKind.MOST + " time").doesNotContain(oldest);
        Matcher way = Pattern.compile("href=\"(/kept/cases/[^\"]*kind=care-entries[^\"#]*)#k-care-entries\"")
                .matcher(first);
        assertThat(way.find()).isTrue();
        String older = page(CARER, way.group(1).replace("&amp;", "&"));
        String path = "/kept/cases/" + id + "/care-entries/correction?of=" + oldest;
        assertThat(older).contains("seen the 0 time", path).doesNotContain("kind=care-entries", "k-custody-links");
        assertThat(page(CARER, path)).contains("seen the 0 time");
    }

    @Test
    void partsOfAVisitAreCorrectedByTheClinicAlone() {
        CareWorld care = new CareWorld();
        String id = care.patient(3).caseId();
        var visit = Api.get(CLINIC, "/api/cases/" + id + "/visits");
        String visitId = visit.getString("[0].id");
        String path = "/kept/cases/" + id + "/discharges/correction";
        String form = page(CLINIC, path + "?of=" + visitId);
        send(
                        CLINIC,
                        path,
                        visitId,
                        hidden(form, "act.seen"),
                        "vetName",
                        "Dr Vet",
                        "vetRegistration",
                        "V-1",
                        "plan",
                        "Dry two days, then short swims.",
                        "limits",
                        "no water at all",
                        "mayHold",
                        "",
                        "reviewOn",
                        "2089-01-04",
                        "reason",
                        "read again")
                .statusCode(303);
        assertThat(Api.get(CLINIC, "/api/visits/" + visitId).getString("discharge.limits"))
                .isEqualTo("no water at all");
        Api.as(CARER).get(path + "?of=" + visitId).then().statusCode(403);
        send(CARER, path, visitId, "", "limits", "none", "reason", "more").statusCode(403);
    }

    @Test
    void nobodySeesOrDoesMoreThanByTheApi() {
        String id = caseOfTheRescuer();
        String path = "/kept/cases/" + id;
        Api.as(CLINIC).get(path).then().statusCode(404);
        Api.as(ROADS_AUTHORITY).get(path).then().statusCode(403);
        Api.as(COORDINATOR).get(path + "/animals/nothing?of=" + id).then().statusCode(404);
        Api.as(COORDINATOR).get(path + "/nothing/correction?of=" + id).then().statusCode(404);
        Api.as(COORDINATOR).get(path + "/animals/correction?of=" + id).then().statusCode(404);
        Api.as(COORDINATOR).get(path + "/animals/correction").then().statusCode(400);
        Api.as(COORDINATOR).get("/kept/nothing/" + id).then().statusCode(404);
        Api.as(DISPATCHER).get(path + "/fates/correction?of=" + id).then().statusCode(403);
        assertThat(page(OFFICER, path)).doesNotContain("/correction?of=", "/withdrawal?of=");
        send(OFFICER, path + "/cases/correction", id, "", "reason", "x").statusCode(403);
    }

    @Test
    void aRescuerIsLedBackToWhatTheyMayOpen() {
        String incident = World.call("Chelodina longicollis", 150.0512, "").getString("incidentId");
        String path = "/kept/incidents/" + incident;
        String form = page(DISPATCHER, path + "/incidents/correction?of=" + incident);
        assertThat(send(
                                DISPATCHER,
                                path + "/incidents/correction",
                                incident,
                                hidden(form, "act.seen"),
                                "happenedAt",
                                "",
                                "cause",
                                "unknown",
                                "reason",
                                "said so later")
                        .statusCode(303)
                        .extract()
                        .header("Location"))
                .endsWith("/desk/incidents/" + incident);
        assertThat(page(DISPATCHER, path)).contains("/calls/correction?of=", "href=\"/desk/incidents/" + incident);
    }

    @Test
    void everyFormOpens() {
        CareWorld care = new CareWorld();
        String id = care.patient(3).caseId();
        Set<String> opened = new TreeSet<>();
        assertThat(page(COORDINATOR, "/kept/cases/" + id))
                .contains("<dd>-30.5</dd>")
                .doesNotContainPattern("<dd>-?\\d+\\.\\d{7}");
        for (String role : List.of(COORDINATOR, CLINIC)) {
            Matcher forms = Pattern.compile("href=\"(/kept/cases/[^\"]+\\?of=[^\"]+)\"")
                    .matcher(page(role, "/kept/cases/" + id));
            while (forms.find()) {
                assertThat(page(role, forms.group(1))).contains("name=\"act.of\"");
                opened.add(forms.group(1).replaceFirst("\\?.*", ""));
            }
        }
        assertThat(opened).hasSizeGreaterThan(10);
        assertThat(page(ADMIN, "/accounts")).contains("/roles\"");
    }

    /** Whether somebody sees a record is asked of the address at which the API has it: so there is one. */
    @Test
    void recordsOfAKindStandAtOneAddress() {
        for (Whole whole : wholes.all()) {
            for (KeptKind kind : whole.kinds()) {
                Set<String> addresses = new TreeSet<>();
                for (KeptKind.Deed<?> deed : kind.deeds()) {
                    String base = KeptKind.base(deed.act().operation());
                    if (base != null && !base.equals("/api/" + whole.name())) {
                        addresses.add(base);
                    }
                }
                assertThat(addresses).as("%s of %s", kind.name(), whole.name()).hasSizeLessThan(2);
            }
        }
    }

    @Test
    void everythingHasWordsInBothLanguages() throws IOException {
        List<String> missing = new ArrayList<>();
        for (Whole whole : wholes.all()) {
            for (KeptKind kind : whole.kinds()) {
                require(missing, KindWords.class, "kinds", kind.key());
                for (KeptKind.Deed<?> deed : kind.deeds()) {
                    Act<?> act = deed.act();
                    require(missing, ActWords.class, "acts", act.key());
                    require(missing, ActExplainedWords.class, "explained", act.key());
                    for (FieldShape shape : forms.shapes(act)) {
                        require(missing, FieldWords.class, "fields", shape.last());
                        if (!ActForms.hintName(shape).isEmpty()) {
                            require(missing, HintWords.class, "hints", ActForms.hintName(shape));
                        }
                        for (String value : shape.values()) {
                            require(missing, ChoiceWords.class, "choices", value);
                        }
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
}
