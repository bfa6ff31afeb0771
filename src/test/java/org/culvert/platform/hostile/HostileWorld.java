package org.culvert.platform.hostile;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Pictures;
import org.culvert.support.World;

/**
 * Records that may be spoilt, made when they are first asked for and made anew once they are spent. Nothing of it is of the
 * kinds, places and groups that other tests look at.
 */
final class HostileWorld {
    private static final Pattern NAME = Pattern.compile("\\{([A-Za-z]+)}");
    private static final String TAXON = "Hostilia probator";
    private static final int CHANGES_A_RECORD_TAKES = 8;

    /** The record that a path is about, by how the path begins; the longest fits first. */
    private static final Map<String, String> OF_PATH = Map.ofEntries(
            Map.entry("/api/absences/", "absence"),
            Map.entry("/api/accounts/", "account"),
            Map.entry("/accounts/", "account"),
            Map.entry("/kept/", "case"),
            Map.entry("/api/aftercare-plans/", "aftercarePlan"),
            Map.entry("/api/agreements/", "agreement"),
            Map.entry("/api/event-subscriptions/", "eventSubscription"),
            Map.entry("/api/animals/", "animal"),
            Map.entry("/api/annual-returns/", "annualReturn"),
            Map.entry("/api/annual-runs/", "annualRun"),
            Map.entry("/api/assessments/", "assessment"),
            Map.entry("/api/attendances/", "attendance"),
            Map.entry("/api/authorisations/", "authorisation"),
            Map.entry("/api/body-measurements/", "bodyMeasurement"),
            Map.entry("/api/calls/", "call"),
            Map.entry("/api/care-entries/", "careEntry"),
            Map.entry("/api/carer-profiles/", "carerProfile"),
            Map.entry("/api/cases/", "case"),
            Map.entry("/cases/", "case"),
            Map.entry("/cases/{id}/body", "deadCase"),
            Map.entry("/care-day/calendar/", "calendarId"),
            Map.entry("/hand/animals/", "case"),
            Map.entry("/hand/attendances/", "attendance"),
            Map.entry("/hand/hand-overs/", "handOver"),
            Map.entry("POST /api/cases/{id}/care-entries", "plannedCase"),
            Map.entry("POST /api/cases/{id}/custody-links", "unheldCase"),
            Map.entry("/api/cases/{id}/body", "deadCase"),
            Map.entry("/api/cases/{id}/fate/withdrawal", "deadCase"),
            Map.entry("PATCH /api/cases/{id}/fate", "deadCase"),
            Map.entry("/api/clinic-profiles/", "clinicProfile"),
            Map.entry("/api/clock-extensions/", "clockExtension"),
            Map.entry("/api/clock-notices/", "clockNotice"),
            Map.entry("/api/clutches/", "clutch"),
            Map.entry("/clutches/", "clutch"),
            Map.entry("/release-area/", "case"),
            Map.entry("/releases/", "release"),
            Map.entry("/non-release-decisions/", "nonRelease"),
            Map.entry("/desk/incidents/", "incident"),
            Map.entry("/overview/alerts/", "healthAlert"),
            Map.entry("/returns/", "annualReturn"),
            Map.entry("/roster/members/", "member"),
            Map.entry("/roster/organisations/", "organisation"),
            Map.entry("/roster/people/", "person"),
            Map.entry("/records/", "recordFile"),
            Map.entry("POST /records/{id}/trials", "recordFileAsRead"),
            Map.entry("/records/trials/", "recordTrial"),
            Map.entry("POST /api/calls/{id}/told-words", "untoldCall"),
            Map.entry("/api/told-words/", "toldWords"),
            Map.entry("/api/closings/", "closing"),
            Map.entry("/api/vaccinations/", "vaccination"),
            Map.entry("/api/disease-suspicions/", "suspicion"),
            Map.entry("POST /api/disease-suspicions/{id}/telling", "untoldSuspicion"),
            Map.entry("/api/exposures/", "exposure"),
            Map.entry("POST /api/exposures/{id}/closing", "toldExposure"),
            Map.entry("/api/alert-thresholds/", "alertThreshold"),
            Map.entry("/api/health-alerts/", "healthAlert"),
            Map.entry("/api/syndrome-reports/", "syndromeReport"),
            Map.entry("/api/growth-tables/", "growthTable"),
            Map.entry("/api/hand-overs/", "handOver"),
            Map.entry("/api/notifiable-conditions/", "condition"),
            Map.entry("/api/holds/", "hold"),
            Map.entry("/api/hotspot-runs/", "run"),
            Map.entry("POST /api/hotspot-runs/{id}/cancellation", "longRun"),
            Map.entry("/hotspots/", "run"),
            Map.entry("/api/incidents/", "incident"),
            Map.entry("/api/incubation-facts/", "incubationFact"),
            Map.entry("/api/joins/", "join"),
            Map.entry("/api/keeping-rules/", "keepingRule"),
            Map.entry("/api/keeping-ties/", "keepingTie"),
            Map.entry("/api/land-areas/", "landArea"),
            Map.entry("/api/members/", "member"),
            Map.entry("/api/missed-task-rules/", "missedRule"),
            Map.entry("/api/non-release-decisions/", "nonRelease"),
            Map.entry("/api/organisations/", "organisation"),
            Map.entry("/api/people/", "person"),
            Map.entry("/api/people/{id}/showing", "hiddenPerson"),
            Map.entry("/api/retention-rules/", "retentionRule"),
            Map.entry("/api/photographs/", "photograph"),
            Map.entry("/api/placement-proposals/", "proposal"),
            Map.entry("/api/placements/", "placement"),
            Map.entry("/api/plan-templates/", "planTemplate"),
            Map.entry("/api/record-files/", "recordFile"),
            Map.entry("/api/record-files/{id}/reading", "decidedFile"),
            Map.entry("/api/records/", "case"),
            Map.entry("POST /api/record-files/{id}/trials", "recordFileAsRead"),
            Map.entry("/api/record-trials/", "recordTrial"),
            Map.entry("/api/record-takings/", "recordTaking"),
            Map.entry("/api/referrals/", "referral"),
            Map.entry("/api/release-approvals/", "approval"),
            Map.entry("/api/release-rules/", "rule"),
            Map.entry("/release-rules/", "rule"),
            Map.entry("/api/release-sites/", "site"),
            Map.entry("/api/releases/", "release"),
            Map.entry("/api/return-forms/", "returnForm"),
            Map.entry("/api/road-networks/", "roadNetwork"),
            Map.entry("/api/place-moves/", "placeMove"),
            Map.entry("/api/road-links/", "roadLink"),
            Map.entry("/api/road-surveys/", "roadSurvey"),
            Map.entry("/api/species-facts/", "speciesFact"),
            Map.entry("/api/species-listings/", "speciesListing"),
            Map.entry("/api/surges/", "surge"),
            Map.entry("/api/taxa/", "taxon"),
            Map.entry("/api/taxon-synonyms/", "taxonSynonym"),
            Map.entry("/api/time-limits/", "timeLimit"),
            Map.entry("/api/traffic-counts/", "trafficCount"),
            Map.entry("/traffic/", "trafficCount"),
            Map.entry("/api/visits/", "visit"),
            Map.entry("PATCH /api/visits/{id}/discharge", "dischargedVisit"),
            Map.entry("/api/whereabouts/", "whereabouts"),
            Map.entry("/api/works/", "works"),
            Map.entry("/works/", "works"));

    private static final String SPENDING =
            "attendances|calls|told-words|joins|hand-overs|visits|clutches|agreements|event-subscriptions"
                    + "|cases|incidents|people|retention-rules|hotspot-runs|road-surveys|traffic-counts"
                    + "|holds|exposures|alert-thresholds|syndrome-reports|disease-suspicions|release-approvals"
                    + "|non-release-decisions|plan-templates|aftercare-plans|care-entries"
                    + "|absences|keeping-rules|placement-proposals|clock-extensions|clock-notices"
                    + "|photographs|surges|keeping-ties|growth-tables|body-measurements"
                    + "|annual-returns|record-files|record-trials|taxon-synonyms";

    private static final Set<String> SPENT = Set.of(("attendance join handOver visit dischargedVisit clutch agreement"
                    + " eventSubscription case deadCase unheldCase incident call otherIncident"
                    + " animalId linkId findingId readingId procedureId orderId useId"
                    + " recoveryId hatchingId person hiddenPerson retentionRule clutchLinkId"
                    + " closing longRun roadSurvey trafficCount hold alertThreshold"
                    + " freshSyndrome syndromeReport exposure toldExposure suspicion"
                    + " untoldSuspicion untoldCall toldWords approval nonRelease partId"
                    + " permitToKeep unknownClinic planTemplate adoptionId aftercarePlan"
                    + " plannedCase careEntry absence keepingRule newCarer proposal heldCase"
                    + " entryId failureId clockExtension clockNotice photograph"
                    + " placingPhotograph surge keepingTie growthTable tableAdoptionId"
                    + " bodyMeasurement annualReturn returnForm recordFile decidedFile"
                    + " recordTrial taxonSynonym visitId handOverId holdId suspicionId")
            .split(" "));

    private final World world = World.shared();
    private final Map<String, String> made = new TreeMap<>();
    private final Map<String, Supplier<String>> makers = new TreeMap<>();
    private boolean changed;
    private int changes;

    HostileWorld() {
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"hostile","name":"hostile animals","pouch":false,"clutches":true,"introduced":false}]
                """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"hostile one","taxonRank":"species","taxonGroup":"hostile"}]
                """.formatted(TAXON)).statusCode(200);
        Api.make(COORDINATOR, "/api/release-rules", """
                {"jurisdiction":"XH","kind":"code","scientificName":"%s","test":"foundPlaceFirst","words":"where it was found",
                 "allowedGrounds":[{"key":"works","words":"building works"}],"source":"made for a test",
                 "readOn":"2020-01-01","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                """.formatted(TAXON));
        for (String member : java.util.List.of(world.carer, world.helper, world.incubatorKeeper)) {
            world.authorise(member, "hostile");
        }
        makers.put("unique", () -> "hostile-" + UUID.randomUUID());
        makers.put("taxonName", () -> TAXON);
        makers.put("rescuer", () -> world.rescuer);
        makers.put("helper", () -> world.helper);
        makers.put("carer", () -> world.carer);
        makers.put("clinic", () -> world.clinic);
        makers.put("type", () -> "invalid");
        makers.put("collectionId", () -> "collisions");
        makers.put("featureId", () -> UUID.randomUUID().toString());
        makers.put("form", () -> "csv");
        makers.put("z", () -> "12");
        makers.put("x", () -> "3755");
        makers.put("y", () -> "2414");
        makers.put("purpose", () -> "invitation");
        makers.put("rank", () -> "1");
        makers.put("kind", () -> "land-areas");
        makers.put("act", () -> "entry");
        makers.put("secret", () -> "of-nobody");
        makers.put("organisation", () -> make(ADMIN, "/api/organisations", "POST /api/organisations"));
        makers.put("member", () -> make(ADMIN, "/api/members", "POST /api/members"));
        makers.put("authorisation", () -> make(ADMIN, "/api/authorisations", "POST /api/authorisations"));
        makers.put("account", () -> make(ADMIN, "/api/accounts", "POST /api/accounts"));
        makers.put("eventSubscription", () -> make(ADMIN, "/api/event-subscriptions", "POST /api/event-subscriptions"));
        makers.put("agreement", () -> make(COORDINATOR, "/api/agreements", "POST /api/agreements"));
        makers.put("rule", () -> make(COORDINATOR, "/api/release-rules", "POST /api/release-rules"));
        makers.put("site", () -> make(COORDINATOR, "/api/release-sites", "POST /api/release-sites"));
        makers.put("taxon", () -> Api.get(ADMIN, "/api/taxa?q=Hostilia").getString("[0].id"));
        makers.put("growthTable", () -> make(COORDINATOR, "/api/growth-tables", "POST /api/growth-tables"));
        makers.put(
                "tableAdoptionId",
                () -> adopt("/api/growth-tables/" + id("growthTable"), "POST /api/growth-tables/{id}/adoptions"));
        makers.put(
                "bodyMeasurement",
                () -> make(
                        COORDINATOR,
                        "/api/cases/" + id("case") + "/body-measurements",
                        "POST /api/cases/{id}/body-measurements"));
        makers.put("recordFile", this::recordFile);
        makers.put("decidedFile", this::decidedFile);
        makers.put("call", this::call);
        makers.put("surge", this::surge);
        makers.put("incident", this::incident);
        makers.put(
                "animalId",
                () -> Api.get(COORDINATOR, "/api/calls/" + id("call")).getString("animals[0].id"));
        makers.put("otherIncident", () -> World.call(TAXON, 150.0512, "").getString("incidentId"));
        makers.put("join", this::join);
        makers.put(
                "attendance",
                () -> make(
                        DISPATCHER,
                        "/api/incidents/" + id("incident") + "/attendances",
                        "POST /api/incidents/{id}/attendances"));
        makers.put("case", this::liveCase);
        makers.put("deadCase", this::deadCase);
        makers.put(
                "unheldCase", () -> Api.make(RESCUER, "/api/cases", filled("""
                        {"incidentId":"{incident}","animal":{"scientificName":"{taxonName}"},"foundAt":"2026-01-04T10:00:00Z"}
                        """)).getString("id"));
        makers.put("releasable", this::liveCase);
        makers.put("linkId", () -> ofCase("custody[0].id"));
        makers.put("animal", () -> ofCase("animal.id"));
        makers.put("whereabouts", this::whereabouts);
        makers.put("handOver", this::handOver);
        makers.put("placement", this::placement);
        makers.put("placedVisit", () -> {
            id("placement");
            return made.get("placedVisit");
        });
        makers.put("planTemplate", () -> make(COORDINATOR, "/api/plan-templates", "POST /api/plan-templates"));
        makers.put(
                "adoptionId",
                () -> adopt("/api/plan-templates/" + id("planTemplate"), "POST /api/plan-templates/{id}/adoptions"));
        makers.put(
                "aftercarePlan",
                () -> make(
                        CLINIC,
                        "/api/cases/" + id("case") + "/aftercare-plans",
                        "POST /api/cases/{id}/aftercare-plans"));
        makers.put("missedRule", this::missedRule);
        makers.put("calendarId", this::calendar);
        makers.put("token", () -> UUID.randomUUID().toString());
        makers.put("plannedCase", this::plannedCase);
        makers.put(
                "careEntry",
                () -> make(
                        CLINIC,
                        "/api/cases/" + id("plannedCase") + "/care-entries",
                        "POST /api/cases/{id}/care-entries"));
        makers.put("assessment", this::assessment);
        makers.put(
                "caseId",
                () -> Api.get(COORDINATOR, "/api/releases/" + id("release")).getString("animals[0].caseId"));
        makers.put("overrides", this::overrides);
        makers.put("release", () -> make(COORDINATOR, "/api/releases", "POST /api/releases"));
        makers.put("liftedId", () -> UUID.randomUUID().toString());
        makers.put(
                "photographId",
                () -> make(
                        COORDINATOR,
                        "/api/releases/" + id("release") + "/photographs",
                        "POST /api/releases/{id}/photographs"));
        makers.put(
                "sightingId",
                () -> make(
                        COORDINATOR,
                        "/api/releases/" + id("release") + "/sightings",
                        "POST /api/releases/{id}/sightings"));
        makers.put(
                "nonRelease",
                () -> make(
                        COORDINATOR,
                        "/api/cases/" + liveCase() + "/non-release-decisions",
                        "POST /api/cases/{id}/non-release-decisions"));
        makers.put("partId", () -> ofNonRelease("second-opinion", "secondOpinions[0].id"));
        makers.put("permitToKeep", () -> ofNonRelease("permit-to-keep", "permitsToKeep[0].id"));
        makers.put("permitId", () -> id("permitToKeep"));
        makers.put("visit", () -> make(CLINIC, "/api/visits", "POST /api/visits"));
        makers.put("visitId", () -> id("visit"));
        makers.put("handOverId", this::handOverOfCase);
        makers.put("holdId", () -> id("hold"));
        makers.put("suspicionId", () -> id("untoldSuspicion"));
        makers.put("dischargedVisit", this::dischargedVisit);
        makers.put(
                "orderId",
                () -> Api.post(
                                CLINIC,
                                "/api/visits/" + id("visit") + "/drug-orders",
                                body("POST /api/visits/{id}/drug-orders"))
                        .statusCode(201)
                        .extract()
                        .path("drugOrders[-1].id"));
        makers.put("useId", () -> {
            String order = id("orderId");
            return Api.post(
                            CLINIC,
                            "/api/visits/" + id("visit") + "/drug-orders/" + order + "/uses",
                            body("POST /api/visits/{id}/drug-orders/{orderId}/uses"))
                    .statusCode(201)
                    .extract()
                    .path("drugOrders.find { it.id == '" + order + "' }.uses[-1].id");
        });
        makers.put(
                "unknownClinic",
                () -> Api.make(ADMIN, "/api/organisations", """
                        {"kind":"clinic","name":"Hostile clinic %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                        .getString("id"));
        makers.put(
                "newCarer",
                () -> Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"H%s","name":"A Carer","attends":false,"cares":true}
                        """.formatted(id("organisation"), UUID.randomUUID()))
                        .getString("id"));
        makers.put("carerProfile", () -> {
            made.remove("newCarer");
            return make(COORDINATOR, "/api/carer-profiles", "POST /api/carer-profiles");
        });
        makers.put(
                "absence",
                () -> make(
                        COORDINATOR, "/api/members/" + id("member") + "/absences", "POST /api/members/{id}/absences"));
        makers.put("heldCase", this::liveCase);
        makers.put("proposal", () -> make(COORDINATOR, "/api/placement-proposals", "POST /api/placement-proposals"));
        makers.put(
                "keepingTie",
                () -> make(
                        COORDINATOR,
                        "/api/cases/" + id("case") + "/keeping-ties",
                        "POST /api/cases/{id}/keeping-ties"));
        makers.put("keepingRule", () -> make(COORDINATOR, "/api/keeping-rules", "POST /api/keeping-rules"));
        makers.put("clinicProfile", () -> {
            made.remove("unknownClinic");
            return make(COORDINATOR, "/api/clinic-profiles", "POST /api/clinic-profiles");
        });
        makers.put("findingId", () -> ofVisit("findings[0].id"));
        makers.put("readingId", () -> ofVisit("readings[0].id"));
        makers.put("procedureId", () -> ofVisit("procedures[0].id"));
        makers.put("clutch", () -> make(COORDINATOR, "/api/clutches", "POST /api/clutches"));
        makers.put(
                "recoveryId",
                () -> Api.get(COORDINATOR, "/api/clutches/" + id("clutch")).getString("recoveries[0].id"));
        makers.put("hatchingId", this::hatching);
        makers.put("entryId", () -> ofClutch("set-ups", "setUps[-1].id"));
        makers.put("failureId", () -> ofClutch("failed-eggs", "failures[-1].id"));
        makers.put("incubationFact", () -> make(COORDINATOR, "/api/incubation-facts", "POST /api/incubation-facts"));
        makers.put(
                "clutchLinkId",
                () -> Api.get(COORDINATOR, "/api/clutches/" + id("clutch")).getString("custody[0].id"));
        makers.put("vaccination", () -> make(ADMIN, "/api/vaccinations", "POST /api/vaccinations"));
        makers.put(
                "closing",
                () -> Api.post(
                                DISPATCHER,
                                "/api/incidents/" + incident() + "/closings",
                                body("POST /api/incidents/{id}/closings"))
                        .extract()
                        .path("id"));
        makers.put("callId", () -> id("call"));
        makers.put("attendanceId", () -> id("attendance"));
        makers.put("untoldCall", () -> World.call(TAXON, 150.0512, "").getString("callId"));
        makers.put(
                "toldWords",
                () -> Api.make(
                                DISPATCHER,
                                "/api/calls/" + World.call(TAXON, 150.0512, "").getString("callId") + "/told-words",
                                body("POST /api/calls/{id}/told-words"))
                        .getString("id"));
        makers.put("person", this::person);
        makers.put("hiddenPerson", () -> {
            String hidden = person();
            Api.change(COORDINATOR, "/api/people/" + hidden, "/hiding", "{\"reason\":\"asked\"}")
                    .statusCode(200);
            return hidden;
        });
        makers.put("roadSurvey", () -> make(COORDINATOR, "/api/road-surveys", "POST /api/road-surveys"));
        makers.put("trafficCount", () -> make(COORDINATOR, "/api/traffic-counts", "POST /api/traffic-counts"));
        makers.put(
                "roadLink",
                () -> Api.get(ADMIN, "/api/road-networks/current/links?limit=1").getString("features[0].id"));
        makers.put("landArea", () -> make(COORDINATOR, "/api/land-areas", "POST /api/land-areas"));
        makers.put("taxonSynonym", () -> make(COORDINATOR, "/api/taxon-synonyms", "POST /api/taxon-synonyms"));
        makers.put("speciesListing", () -> make(COORDINATOR, "/api/species-listings", "POST /api/species-listings"));
        makers.put("referral", () -> make(COORDINATOR, "/api/referrals", "POST /api/referrals"));
        makers.put("timeLimit", () -> make(COORDINATOR, "/api/time-limits", "POST /api/time-limits"));
        makers.put(
                "clockExtension",
                () -> make(
                        COORDINATOR,
                        "/api/cases/" + liveCase() + "/clock-extensions",
                        "POST /api/cases/{id}/clock-extensions"));
        makers.put(
                "clockNotice",
                () -> make(COORDINATOR, "/api/cases/" + id("case") + "/notices", "POST /api/cases/{id}/notices"));
        makers.put(
                "photograph",
                () -> make(
                        COORDINATOR,
                        "/api/incidents/" + id("incident") + "/photographs",
                        "POST /api/incidents/{id}/photographs"));
        makers.put(
                "placingPhotograph",
                () -> Api.make(
                                COORDINATOR,
                                "/api/incidents/" + id("incident") + "/photographs",
                                Pictures.sent("image/jpeg", Pictures.jpegAt(-30.5, 150.0513), ""))
                        .getString("id"));
        makers.put("returnForm", () -> make(COORDINATOR, "/api/return-forms", "POST /api/return-forms"));
        makers.put("annualReturn", this::annualReturn);
        makers.put("number", () -> "1");
        makers.put("recordFileAsRead", this::recordFileAsRead);
        makers.put(
                "recordTrial",
                () -> done(
                        "/api/record-trials/",
                        Api.post(COORDINATOR, "/api/record-files/" + recordFileAsRead() + "/trials", "")
                                .statusCode(202)
                                .extract()
                                .path("id")));
        makers.put("recordTaking", () -> {
            String trial = id("recordTrial");
            made.remove("recordTrial");
            return done(
                    "/api/record-takings/",
                    Api.post(
                                    COORDINATOR,
                                    "/api/record-trials/" + trial + "/taking",
                                    body("POST /api/record-trials/{id}/taking"))
                            .statusCode(202)
                            .extract()
                            .path("id"));
        });
        makers.put("speciesFact", () -> make(COORDINATOR, "/api/species-facts", "POST /api/species-facts"));
        makers.put("hold", () -> make(RESCUER, "/api/cases/" + id("case") + "/holds", "POST /api/cases/{id}/holds"));
        makers.put(
                "exposure",
                () -> Api.make(RESCUER, "/api/exposures", filled("""
                        {"kind":"scratch","exposed":{"memberId":"{rescuer}"},"caseId":"{case}","washed":"yes",
                         "happenedAt":"2026-01-05T10:00:00Z"}
                        """)).getString("id"));
        makers.put("toldExposure", () -> make(RESCUER, "/api/exposures", "POST /api/exposures"));
        makers.put(
                "condition", () -> make(COORDINATOR, "/api/notifiable-conditions", "POST /api/notifiable-conditions"));
        makers.put(
                "untoldSuspicion",
                () -> Api.make(RESCUER, "/api/cases/" + liveCase() + "/disease-suspicions", """
                        {"conditionId":"%s","signs":"it lies on its side","suspectedBy":"Dr Vet","told":null}
                        """.formatted(
                                        id("condition")))
                        .getString("id"));
        makers.put(
                "suspicion",
                () -> make(
                        RESCUER,
                        "/api/cases/" + liveCase() + "/disease-suspicions",
                        "POST /api/cases/{id}/disease-suspicions"));
        makers.put("syndrome", this::syndrome);
        makers.put("freshSyndrome", this::syndrome);
        makers.put("alertThreshold", () -> {
            made.remove("freshSyndrome");
            return make(COORDINATOR, "/api/alert-thresholds", "POST /api/alert-thresholds");
        });
        makers.put("syndromeReport", this::syndromeReport);
        makers.put("healthAlert", () -> {
            String last = "";
            for (int i = 0; i < 3; i++) {
                last = syndromeReport();
            }
            return Api.get(COORDINATOR, "/api/syndrome-reports/" + last).getString("alertId");
        });
        makers.put(
                "approval",
                () -> make(
                        COORDINATOR,
                        "/api/release-sites/" + id("site") + "/approvals",
                        "POST /api/release-sites/{id}/approvals"));
        makers.put("roadNetwork", () -> Api.get(ADMIN, "/api/road-networks").getString("[0].id"));
        makers.put("placeMove", this::placeMove);
        makers.put("works", () -> make(COORDINATOR, "/api/works", "POST /api/works"));
        makers.put("retentionRule", () -> make(ADMIN, "/api/retention-rules", "POST /api/retention-rules"));
        makers.put(
                "annualRun",
                () -> Api.post(COORDINATOR, "/api/annual-runs", body("POST /api/annual-runs"))
                        .statusCode(202)
                        .extract()
                        .path("id"));
        makers.put(
                "longRun",
                () -> Api.post(
                                COORDINATOR,
                                "/api/hotspot-runs",
                                body("POST /api/hotspot-runs").replace("\"simulations\":19", "\"simulations\":99999"))
                        .statusCode(202)
                        .extract()
                        .path("id"));
        makers.put(
                "run",
                () -> Api.post(COORDINATOR, "/api/hotspot-runs", body("POST /api/hotspot-runs"))
                        .statusCode(202)
                        .extract()
                        .path("id"));
    }

    /** A file of one old record, which nobody else has, and how it is to be read. */
    private String recordFileAsRead() {
        String file = Api.as(COORDINATOR)
                .contentType("text/csv")
                .queryParam("fileName", "hostile.csv")
                .body("date,latitude,longitude,species,remarks\r\n1961-03-04,-30.5,150.05,hostile one,%s\r\n"
                        .formatted(UUID.randomUUID()))
                .post("/api/record-files")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        Api.make(COORDINATOR, "/api/record-files/" + file + "/reading", """
                {"columns":{"day":0,"decimalLatitude":1,"decimalLongitude":2,"scientificName":3,"remarks":4},
                 "dayOrder":"yearMonthDay","uncertaintyMetres":20,"cause":"unknown"}
                """);
        return file;
    }

    /** The identifier of work that is done in the background, once it is. */
    private static String done(String path, String id) {
        Patience.until(
                path + id,
                () -> List.of("done", "failed")
                        .contains(Api.get(COORDINATOR, path + id).getString("state")));
        return id;
    }

    /** Waits for what an operation that was taken on does in the background, where it writes what others count. */
    void settle(String operation, String answer) {
        Map<String, String> paths = Map.of(
                "POST /api/record-files/{id}/trials", "/api/record-trials/",
                "POST /api/record-trials/{id}/taking", "/api/record-takings/");
        String path = paths.get(operation);
        Matcher id = Pattern.compile("\"id\":\"([0-9a-f-]{36})\"").matcher(answer);
        if (path != null && id.find()) {
            done(path, id.group(1));
            changed = true;
        }
    }

    /** Waits until it is done, since it writes while other things are tried. */
    private String placeMove() {
        String network = Api.get(ADMIN, "/api/road-networks").getString("[0].id");
        String id = Api.post(COORDINATOR, "/api/road-networks/" + network + "/place-moves", "")
                .statusCode(202)
                .extract()
                .path("id");
        Patience.until(
                "place move " + id,
                () -> Api.get(COORDINATOR, "/api/place-moves/" + id)
                        .getString("state")
                        .equals("done"));
        return id;
    }

    private String body(String operation) {
        return filled(Contract.GOOD.get(operation).toString());
    }

    private String make(String role, String path, String operation) {
        return Api.make(role, path, body(operation)).getString("id");
    }

    /** Whether records were made since this was last asked. */
    boolean hasChanged() {
        boolean was = changed;
        changed = false;
        return was;
    }

    private String id(String name) {
        String known = made.get(name);
        if (known == null) {
            Supplier<String> maker = makers.get(name);
            if (maker == null) {
                throw new IllegalArgumentException("nothing makes " + name);
            }
            known = maker.get();
            changed = true;
            if (known == null) {
                throw new IllegalStateException("nothing came of " + name);
            }
            made.put(name, known);
        }
        return name.equals("unique") ? made.remove(name) : known;
    }

    /** A text with names in braces, with the records in their place. */
    String filled(String text) {
        Matcher name = NAME.matcher(text);
        var filled = new StringBuilder();
        while (name.find()) {
            name.appendReplacement(filled, Matcher.quoteReplacement(id(name.group(1))));
        }
        // What was made as a list of JSON stands in the place of the list of its name
        return name.appendTail(filled).toString().replace("[\"[", "[").replace("]\"]", "]");
    }

    /** The path of an operation, about the record that fits it. */
    String path(String verb, String template) {
        String record = OF_PATH.entrySet().stream()
                .filter(entry ->
                        (verb + " " + template).startsWith(entry.getKey()) || template.startsWith(entry.getKey()))
                .max(Map.Entry.comparingByKey(java.util.Comparator.comparingInt(String::length)))
                .map(Map.Entry::getValue)
                .orElse("");
        String path =
                template.replace("{id}", record.isEmpty() ? UUID.randomUUID().toString() : id(record));
        if (template.startsWith("/kept/")) {
            path = path.replace("{whole}", "cases").replace("{kind}", "cases").replace("{act}", "correction");
        }
        if (template.startsWith("/api/incidents/")) {
            path = path.replace("{photographId}", "{placingPhotograph}");
        }
        return filled(template.startsWith("/api/clutches/") ? path.replace("{linkId}", "{clutchLinkId}") : path);
    }

    /** Begins with fresh records. */
    void renew() {
        made.keySet().removeAll(SPENT);
        changes = 0;
    }

    /**
     * Forgets what a change has used up, so that the next one finds fresh records.
     *
     * @param once whether the operation can be carried out on a record once alone; of others, each record takes some
     */
    void spent(String operation, boolean once) {
        if (operation.equals("POST /api/alert-thresholds")) {
            made.remove("freshSyndrome");
        } else if (operation.startsWith("POST /api/releases")) {
            made.keySet().removeAll(Set.of("releasable", "assessment", "overrides"));
            made.keySet()
                    .removeAll(
                            operation.matches(".*(withdrawal|support-feeding-end)")
                                    ? Set.of("release", "caseId", "photographId", "sightingId")
                                    : Set.of());
        } else if (isSpending(operation) && (once || ++changes >= CHANGES_A_RECORD_TAKES)) {
            renew();
        }
    }

    /** What was tried is refused as the record now is: others are tried on a fresh one. */
    void refused(String operation) {
        if (changes > 0 && isSpending(operation)) {
            renew();
        }
    }

    static boolean isSpending(String operation) {
        return operation.matches("POST /(records|traffic|cases|api/(" + SPENDING + "))/.*");
    }

    private String call() {
        Json call = World.call(TAXON, 150.0512, "");
        made.remove("placingPhotograph");
        made.put("incident", call.getString("incidentId"));
        return call.getString("callId");
    }

    private String incident() {
        made.remove("animalId");
        String call = call();
        made.put("call", call);
        return made.get("incident");
    }

    /** It is at the clinic for a day, so that the clinic may record visits of it. */
    private String liveCase() {
        String live = Api.make(RESCUER, "/api/cases", filled("""
                        {"incidentId":"{incident}","animal":{"scientificName":"{taxonName}","sex":"female"},
                         "foundAt":"2026-01-04T10:00:00Z","holder":{"memberId":"{rescuer}"}}
                        """)).getString("id");
        Api.post(RESCUER, "/api/cases/" + live + "/whereabouts", filled("{\"organisationId\":\"{clinic}\"}"))
                .statusCode(200);
        return live;
    }

    private String deadCase() {
        String dead = liveCase();
        Api.change(COORDINATOR, "/api/cases/" + dead, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        return dead;
    }

    private String surge() {
        String surge = make(COORDINATOR, "/api/surges", "POST /api/surges");
        Api.make(COORDINATOR, "/api/surges/" + surge + "/sectors", "{\"code\":\"A\",\"words\":\"the hill\"}");
        return surge;
    }

    /** Of which something has changed since. */
    private String annualReturn() {
        String signed = make(COORDINATOR, "/api/annual-returns/signing", "POST /api/annual-returns/signing");
        made.remove("returnForm");
        liveCase();
        return signed;
    }

    private String syndrome() {
        return make(COORDINATOR, "/api/syndromes", "POST /api/syndromes");
    }

    private String syndromeReport() {
        return make(RESCUER, "/api/cases/" + liveCase() + "/syndrome-reports", "POST /api/cases/{id}/syndrome-reports");
    }

    private String join() {
        String joined = World.call(TAXON, 150.0512, "").getString("incidentId");
        return Api.post(
                        DISPATCHER,
                        "/api/incidents/" + World.call(TAXON, 150.0512, "").getString("incidentId") + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"the same\"}".formatted(joined))
                .extract()
                .path("joins[0].id");
    }

    private String whereabouts() {
        return Api.post(COORDINATOR, "/api/cases/" + liveCase() + "/whereabouts", "{\"words\":\"in the yard\"}")
                .extract()
                .path("whereabouts.id");
    }

    private String handOver() {
        return handOver(liveCase());
    }

    private String handOverOfCase() {
        return handOver(id("case"));
    }

    private String handOver(String ofCase) {
        return Api.post(
                        RESCUER,
                        "/api/cases/" + ofCase + "/hand-overs",
                        filled("{\"taker\":{\"memberId\":\"{helper}\"}}"))
                .extract()
                .path("id");
    }

    private String placement() {
        String placed = liveCase();
        made.put(
                "placedVisit",
                Api.make(CLINIC, "/api/visits", filled("{\"caseId\":\"" + placed + "\",\"clinicId\":\"{clinic}\"}"))
                        .getString("id"));
        return Api.make(
                        COORDINATOR,
                        "/api/cases/" + placed + "/placements",
                        // Rules of the network's own that came in with other bodies may speak against it
                        filled("{\"carerMemberId\":\"{carer}\",\"despite\":\"the only one near\"}"))
                .getString("id");
    }

    private String adopt(String what, String operation) {
        return Api.change(CLINIC, what, "/adoptions", body(operation))
                .statusCode(201)
                .extract()
                .path("adoptions[0].id");
    }

    /** One rule holds for a group at a time. */
    private String missedRule() {
        String known =
                Api.get(COORDINATOR, "/api/missed-task-rules").getString("find { it.taxonGroup == 'hostile' }?.id");
        return known == null ? make(COORDINATOR, "/api/missed-task-rules", "POST /api/missed-task-rules") : known;
    }

    /** A member has one address at a time. */
    private String calendar() {
        String calendars = "/api/members/" + id("member") + "/calendars";
        String standing = Api.get(COORDINATOR, calendars).getString("find { it.revokedAt == null }?.id");
        return standing == null
                ? Api.post(COORDINATOR, calendars, "").statusCode(201).extract().path("id")
                : standing;
    }

    private String plannedCase() {
        make(CLINIC, "/api/cases/" + id("case") + "/aftercare-plans", "POST /api/cases/{id}/aftercare-plans");
        return id("case");
    }

    private String assessment() {
        World.signFit(id("releasable"), org.culvert.support.Clocks.now().toString());
        return Api.make(COORDINATOR, "/api/assessments", filled("{\"caseId\":\"{releasable}\",\"siteId\":\"{site}\"}"))
                .getString("id");
    }

    /** The release's tests that do not pass are set aside by somebody. */
    private String overrides() {
        return Api.get(COORDINATOR, "/api/assessments/" + id("assessment"))
                .<String>getList("tests.findAll { it.verdict != 'pass' && it.lifting != 'notNeeded' }.key")
                .stream()
                .map(key -> "{\"key\":\"%s\",\"reason\":\"asked\"}".formatted(key))
                .collect(java.util.stream.Collectors.joining(",", "[", "]"));
    }

    private String ofNonRelease(String act, String path) {
        return Api.post(
                        COORDINATOR,
                        "/api/non-release-decisions/" + id("nonRelease") + "/" + act,
                        body("POST /api/non-release-decisions/{id}/" + act))
                .statusCode(200)
                .extract()
                .path(path);
    }

    private String dischargedVisit() {
        String visit = make(CLINIC, "/api/visits", "POST /api/visits");
        Api.make(CLINIC, "/api/visits/" + visit + "/discharge", body("POST /api/visits/{id}/discharge"));
        return visit;
    }

    private String ofClutch(String entries, String path) {
        return Api.post(
                        COORDINATOR,
                        "/api/clutches/" + id("clutch") + "/" + entries,
                        body("POST /api/clutches/{id}/" + entries))
                .statusCode(201)
                .extract()
                .path(path);
    }

    /** A small file of old records, each another one. */
    private String recordFile() {
        return Api.as(COORDINATOR)
                .contentType("text/csv")
                .body(("Date,Road,km,Species,Notes\n2024-03-09,Mill Road,12.4,fox," + UUID.randomUUID() + "\n")
                        .getBytes(StandardCharsets.UTF_8))
                .post("/api/record-files?fileName=old.csv")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    private String decidedFile() {
        String file = recordFile();
        Api.post(COORDINATOR, "/api/record-files/" + file + "/reading", body("POST /api/record-files/{id}/reading"))
                .statusCode(201);
        return file;
    }

    private String hatching() {
        Api.post(COORDINATOR, "/api/clutches/" + id("clutch") + "/hatchings", "{\"hatched\":1}");
        return Api.get(COORDINATOR, "/api/clutches/" + id("clutch")).getString("hatchings[0].id");
    }

    private String person() {
        String phone = "hostile " + UUID.randomUUID();
        Api.make(DISPATCHER, "/api/calls", filled("""
                {"cause":"unknown","caller":{"name":"Hostile Driver","phone":"%s"},
                 "animals":[{"scientificName":"{taxonName}"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.05"}}}
                """.formatted(phone)));
        return Api.post(COORDINATOR, "/api/people/search", "{\"phone\":\"%s\"}".formatted(phone))
                .extract()
                .path("[0].id");
    }

    private String ofCase(String path) {
        return Api.get(COORDINATOR, "/api/cases/" + id("case")).getString(path);
    }

    private String ofVisit(String path) {
        return Api.get(CLINIC, "/api/visits/" + id("visit")).getString(path);
    }
}
