package org.culvert.platform.sight;

import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;

/** One record of every kind, each of which the test's rescuer, clinic and carer may see. */
public final class WalkedWorld {
    private static final String TURTLE = "Chelodina longicollis";

    private WalkedWorld() {}

    /** The identifier of a record by the path under which single ones are. */
    public static Map<String, String> identifiers() {
        World world = World.shared();
        Map<String, String> known = new TreeMap<>();
        known.put("/ogc/collections", "collisions");
        Json call = Api.make(DISPATCHER, "/api/calls", """
                {"people":{"anyoneHurt":"no","offTheRoad":"yes","policeReference":"E-1"},
                 "caller":{"name":"A Driver","phone":"555 0101","email":"driver@example.org","address":"1 Mill Road"},
                 "words":"by the old mill","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","vitality":"alive","lifeStage":"adult","sex":"female",
                   "condition":"bleeding","verbatimIdentification":"a turtle"}],
                 "place":{"roadAndChainage":{"road":"Mill Road","chainageKilometres":"5.1"}}}
                """.formatted(TURTLE));
        String incident = call.getString("incidentId");
        String other = World.call(TURTLE, 150.0512, "").getString("incidentId");
        Json joined = Api.post(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"the same turtle\"}".formatted(other))
                .extract()
                .jsonPath();
        String attendance = Api.make(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        "{\"leadMemberId\":\"%s\",\"helperMemberIds\":[\"%s\"],\"policeReference\":\"E-1\"}"
                                .formatted(world.rescuer, world.helper))
                .getString("id");
        String mother = newCase(world, incident, attendance);
        Api.post(
                        RESCUER,
                        "/api/cases/" + mother + "/whereabouts",
                        "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        String visit = Api.make(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","weightGrams":820,"gravid":"yes","diagnosis":"a fracture",
                         "findings":[{"side":"left","part":"marginal-7","kind":"fracture","finding":"fracture"}],
                         "readings":[{"what":"eggs","counted":9,"reader":"Dr Vet","confidence":"medium"}],
                         "procedures":[{"procedure":"eggs recovered","vetName":"Dr Vet","vetRegistration":"V-1"}]}
                        """.formatted(mother, world.clinic))
                .getString("id");
        Api.make(
                CLINIC,
                "/api/visits/" + visit + "/discharge",
                "{\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\",\"plan\":\"dry two days\",\"limits\":\"no water\"}");
        String clutch = Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","visitId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":9,"setToIncubate":9,"broken":0,"discarded":0}}
                        """.formatted(mother, visit, world.incubatorKeeper))
                .getString("id");
        String handOver = Api.make(
                        COORDINATOR,
                        "/api/cases/" + mother + "/placements",
                        "{\"carerMemberId\":\"%s\",\"visitId\":\"%s\",\"conditions\":\"dry\"}"
                                .formatted(world.carer, visit))
                .getString("handOverId");
        String site = Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"Lagoon","jurisdiction":"XZ","decimalLatitude":-30.52,"decimalLongitude":150.035,
                         "coordinateUncertaintyInMeters":20,"habitat":"wetland","taxonGroups":["turtles"],
                         "catchment":"the creek","protectedArea":"the reserve"}
                        """).getString("id");
        known.put("/api/calls", call.getString("callId"));
        known.put("/api/incidents", incident);
        known.put("/api/joins", joined.getString("joins[0].id"));
        known.put("/api/attendances", attendance);
        known.put("/api/cases", mother);
        known.put("/api/visits", visit);
        known.put("/api/clutches", clutch);
        known.put("/clutches", clutch);
        for (String[] entry : new String[][] {
            {"failed-eggs", "{\"failed\":1,\"grounds\":\"mouldy\",\"saidBy\":\"A Carer\",\"words\":\"mould\"}"},
            {"eggs-left-inside", "{\"counted\":1,\"reader\":\"Dr Vet\",\"words\":\"felt\"}"},
            {
                "set-ups",
                "{\"medium\":\"vermiculite\",\"waterParts\":1,\"mediumParts\":1,\"box\":\"3\",\"setUpBy\":\"A Carer\"}"
            },
            {"candlings", "{\"developing\":7,\"notDeveloping\":1,\"cannotTell\":0,\"candledBy\":\"A Carer\"}"},
            {"temperatures", "{\"source\":\"glass\",\"celsius\":29}"}
        }) {
            Api.make(COORDINATOR, "/api/clutches/" + clutch + "/" + entry[0], entry[1]);
        }
        known.put(
                "/api/incubation-facts",
                Api.get(COORDINATOR, "/api/incubation-facts").getString("[0].id"));
        known.put("/api/hand-overs", handOver);
        known.put("/api/release-sites", site);
        known.put(
                "/api/non-release-decisions",
                Api.make(CLINIC, "/api/cases/" + mother + "/non-release-decisions", """
                        {"grounds":["cannotBreedSafely"],"words":"her pelvis","vetName":"Dr Vet","vetRegistration":"V-1",
                         "reviewDueOn":"2090-01-01"}
                        """)
                        .getString("id"));
        care(known, mother, visit);
        known.put("/problems", "invalid");
        release(world, known, incident, attendance, site);
        known.put(
                "/api/hotspot-runs",
                Api.post(COORDINATOR, "/api/hotspot-runs", """
                        {"periodFrom":"2019-01-01","periodTo":"2019-12-31","taxonGroup":"turtles","simulations":19,
                         "reachMetres":300,"seed":7}
                        """)
                        .statusCode(202)
                        .extract()
                        .path("id"));
        known.put("/hotspots", known.get("/api/hotspot-runs"));
        known.put(
                "/api/exposures",
                Api.make(RESCUER, "/api/exposures", """
                        {"kind":"scratch","exposed":{"memberId":"%s"},"caseId":"%s","bodyPart":"left hand","washed":"yes",
                         "washedMinutes":15,"told":{"unit":"the public health unit","by":"A Rescuer","reference":"PHU-1"}}
                        """.formatted(world.rescuer, mother))
                        .getString("id"));
        alike(world, known, mother);
        known.put("/api/notifiable-conditions", "01920000-0000-7000-8000-000000049001");
        known.put("/api/works", Api.make(COORDINATOR, "/api/works", """
                        {"kind":"fence","words":"a fence","road":"Mill Road","fromChainageMetres":3000,
                         "toChainageMetres":5000,"endsMetres":500,"builtFrom":"2019-01-01","builtUntil":"2019-12-31"}
                        """).getString("id"));
        known.put(
                "/api/road-surveys",
                Api.make(COORDINATOR, "/api/road-surveys", """
                        {"organisationId":"%s","road":"Mill Road","fromChainageMetres":3000,"toChainageMetres":5000,
                         "startedAt":"1995-01-05T10:00:00Z","endedAt":"1995-01-05T11:00:00Z","travelledBy":"foot",
                         "speedKmh":4,"observers":2,"taxonGroups":["turtles"],"words":"both verges"}
                        """.formatted(world.network))
                        .getString("id"));
        known.put(
                "/api/traffic-counts",
                Api.make(COORDINATOR, "/api/traffic-counts", """
                        {"place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.02"},"uncertaintyMetres":20},
                         "station":"M-1","from":"1991-01-01","to":"1991-12-31","vehiclesPerDay":2000,
                         "measure":"annualAverage","standardError":50,"daysCounted":7,"directions":"one",
                         "direction":"eastbound","heavyVehicleShare":0.1,"kind":"shortTerm","source":"made for a test",
                         "words":"tubes"}
                        """).getString("id"));
        known.put(
                "/api/road-links",
                Api.get(COORDINATOR, "/api/road-networks/current/links?limit=1").getString("features[0].id"));
        known.put("/works", known.get("/api/works"));
        known.put("/traffic", known.get("/api/traffic-counts"));
        ground(world, known, mother, site);
        growth(known, mother);
        known.put("/api/surges", surge(world));
        known.put(
                "/api/keeping-ties",
                Api.make(COORDINATOR, "/api/cases/" + mother + "/keeping-ties", """
                        {"keep":"together","otherCaseId":"%s","words":"they came in one box"}
                        """.formatted(
                                        newCase(world, incident, attendance)))
                        .getString("id"));
        return known;
    }

    private static void growth(Map<String, String> known, String mother) {
        String table = Api.make(COORDINATOR, "/api/growth-tables", """
                        {"key":"walked-%s","name":"an invented table","taxon":"%s","sex":"both","measure":"carapaceLength",
                         "estimatesAge":true,"rows":[{"ageDays":0,"value":10},{"ageDays":20000,"value":300}],
                         "source":"made for a test","readOn":"2026-01-01","licence":"for a test"}
                        """.formatted(UUID.randomUUID(), TURTLE))
                .getString("id");
        Api.change(CLINIC, "/api/growth-tables/" + table, "/adoptions", """
                        {"vetName":"Dr Vet","vetRegistration":"V-1"}
                        """).statusCode(201);
        Api.correct(
                        COORDINATOR,
                        "/api/animals/"
                                + Api.get(COORDINATOR, "/api/cases/" + mother).getString("animal.id"),
                        "{\"bornOn\":\"2020-01-01\",\"bornDoubtDays\":30,\"reason\":\"she was hatched here\"}")
                .statusCode(200);
        known.put("/api/growth-tables", table);
        known.put(
                "/api/body-measurements",
                Api.make(CLINIC, "/api/cases/" + mother + "/body-measurements", """
                        {"measure":"carapaceLength","value":180,"words":"with callipers"}
                        """)
                        .getString("id"));
    }

    /** A surge with a sector and two animals, one of which is at the clinic. */
    private static String surge(World world) {
        String surge = Api.make(COORDINATOR, "/api/surges", """
                        {"name":"The fire on the hill","kind":"fire","from":"2026-01-01T00:00:00Z","tentWords":"on the oval",
                         "tent":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.05"}},"holderMemberId":"%s"}
                        """.formatted(world.rescuer))
                .getString("id");
        Api.make(COORDINATOR, "/api/surges/" + surge + "/sectors", """
                {"code":"A","words":"the hill","areaWords":"north of the road","area":{"type":"Polygon",
                  "coordinates":[[[150.03,-30.53],[150.04,-30.53],[150.04,-30.52],[150.03,-30.53]]]}}
                """);
        Json taken = Api.make(RESCUER, "/api/surges/" + surge + "/intakes", """
                {"animals":[{"sector":"A","taxon":"%s","vitality":"alive","triage":"delayed","condition":"singed",
                  "foundAt":"2026-01-02T00:00:00Z","foundNotBefore":"2026-01-01T00:00:00Z"},
                 {"sector":"A","vitality":"dead"}]}
                """.formatted(TURTLE));
        Api.post(
                        RESCUER,
                        "/api/cases/" + taken.getString("animals[0].caseId") + "/whereabouts",
                        "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        return surge;
    }

    /** A template, adopted, and a plan with an entry of each kind of field. */
    private static void care(Map<String, String> known, String mother, String visit) {
        String weigh = """
                {"key":"weigh","words":"weigh her","firstDay":0,"lastDay":9,"rhythm":"daily","measure":"grams","low":700,
                 "high":900,"fallPercentPerWeek":5,"fallOverDays":28,"hour":"00:00"}
                """;
        String template = Api.make(CLINIC, "/api/plan-templates", """
                        {"key":"walked-%s","name":"an example","taxonGroup":"turtles","source":"made for a test","steps":[%s]}
                        """.formatted(UUID.randomUUID(), weigh))
                .getString("id");
        Api.change(CLINIC, "/api/plan-templates/" + template, "/adoptions", """
                        {"vetName":"Dr Vet","vetRegistration":"V-1"}
                        """).statusCode(201);
        Json plan = Api.make(CLINIC, "/api/cases/" + mother + "/aftercare-plans", """
                {"templateId":"%s","visitId":"%s","vetName":"Dr Vet","vetRegistration":"V-1"}
                """.formatted(template, visit));
        known.put("/calendars", calendarToken());
        known.put("/api/plan-templates", template);
        known.put("/api/aftercare-plans", plan.getString("id"));
        known.put(
                "/api/care-entries",
                Api.make(CLINIC, "/api/cases/" + mother + "/care-entries", """
                                {"stepKey":"weigh","day":0,"value":690,"words":"eats"}
                                """).getString("id"));
    }

    /** An alert of two animals with one syndrome. */
    private static void alike(World world, Map<String, String> known, String mother) {
        String syndrome = Api.make(COORDINATOR, "/api/syndromes", """
                        {"name":"Syndrome %s","taxonGroup":"turtles","words":"it circles","source":"made for a test",
                         "readOn":"2026-01-01"}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        known.put(
                "/api/alert-thresholds",
                Api.make(COORDINATOR, "/api/alert-thresholds", """
                        {"syndromeId":"%s","smallestCount":2,"withinKilometres":5,"withinDays":7,"source":"made for a test",
                         "readOn":"2026-01-01","validFrom":"2020-01-01"}
                        """.formatted(syndrome))
                        .getString("id"));
        Json report = null;
        for (String animal : java.util.List.of(
                newCase(world, World.call(TURTLE, 150.0512, "").getString("incidentId"), null), mother)) {
            report = Api.make(RESCUER, "/api/cases/" + animal + "/syndrome-reports", """
                    {"syndromeId":"%s","at":"2026-02-01T02:00:00Z","words":"it circles"}
                    """.formatted(syndrome));
        }
        known.put("/api/syndrome-reports", report.getString("id"));
        known.put("/api/health-alerts", report.getString("alertId"));
        Api.make(COORDINATOR, "/api/health-alerts/" + report.getString("alertId") + "/acknowledgements", """
                {"name":"Dr Vet","words":"rang the wildlife health body"}
                """);
    }

    /** The secret in the address of the carer's calendar. */
    private static String calendarToken() {
        return CareWorld.calendar(CARER).replaceAll("^/calendars/|[.]ics$", "");
    }

    /** What release rules ask of beside the case and the site. */
    private static void ground(World world, Map<String, String> known, String mother, String site) {
        known.put(
                "/api/holds",
                Api.make(RESCUER, "/api/cases/" + mother + "/holds", """
                        {"kind":"asked","askedBy":"the health unit","reference":"H-1"}
                        """).getString("id"));
        Api.make(CLINIC, "/api/cases/" + mother + "/fitness-checks", """
                {"vetName":"Dr Vet","vetRegistration":"V-1","items":[{"aspect":"movement","answer":"fit"}],
                 "housedWithPets":"no","words":"moves well"}
                """);
        String approval = """
                {"of":"landowner","given":true,"until":"2090-01-01","reference":"L-1","askedOf":"the estate's office"}
                """;
        Api.make(COORDINATOR, "/api/cases/" + mother + "/release-approvals", approval);
        known.put(
                "/api/release-approvals",
                Api.make(COORDINATOR, "/api/release-sites/" + site + "/approvals", approval)
                        .getString("id"));
        known.put(
                "/api/land-areas", Api.make(COORDINATOR, "/api/land-areas", """
                        {"kind":"water","name":"The lagoon","source":"a map","from":"2020-01-01",
                         "geometry":{"type":"Polygon",
                           "coordinates":[[[150.03,-30.53],[150.04,-30.53],[150.04,-30.52],[150.03,-30.53]]]}}
                        """).getString("id"));
        known.put(
                "/api/disease-suspicions",
                Api.make(RESCUER, "/api/cases/" + mother + "/disease-suspicions", """
                        {"conditionId":"01920000-0000-7000-8000-000000049003","signs":"it lies on its side",
                         "suspectedBy":"Dr Vet","told":{"to":"the hotline","by":"Dr Vet","reference":"EAD-1"}}
                        """)
                        .getString("id"));
        clocks(known, mother);
        known.put("/api/species-facts", "01920000-0000-7000-8000-000000034001");
        annualReturn(known, world);
    }

    /** What the carer signed of last year, with a supplement. */
    private static void annualReturn(Map<String, String> known, World world) {
        String example = "/api/return-forms/01920000-0000-7000-8000-000000073001";
        known.put("/api/return-forms", example.substring("/api/return-forms/".length()));
        Json form = Api.get(COORDINATOR, example);
        String words = form.<Map<String, String>>getList("vocabulary").stream()
                .map(word -> "{\"end\":\"%s\",\"word\":\"%s\"}".formatted(word.get("end"), word.get("word")))
                .collect(java.util.stream.Collectors.joining(","));
        String own =
                Api.make(COORDINATOR, "/api/return-forms", """
                        {"jurisdiction":"XZ","title":"walked","startMonth":1,"startDay":1,"dueMonth":3,"dueDay":31,
                         "columns":[{"shows":"scientificName","heading":"species"},{"shows":"kind","heading":"kind"},
                          {"shows":"opening","heading":"before"},{"shows":"cameIn","heading":"in"},
                          {"shows":"wentOut","heading":"out"},{"shows":"closing","heading":"after"}],
                         "vocabulary":[%s],"countsEggs":true,"countsHatchlings":true,"countsBodies":true,"countsMembers":false,
                         "source":"made for a test","readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """.formatted(words)).getString("id");
        known.put(
                "/api/annual-returns",
                Api.make(COORDINATOR, "/api/annual-returns/signing", """
                                {"formId":"%s","memberId":"%s","from":"2025-01-01","name":"A Carer","capacity":"the carer",
                                 "signedOn":"2026-01-05"}
                                """.formatted(own, world.carer))
                        .getString("id"));
    }

    private static void clocks(Map<String, String> known, String mother) {
        String limit =
                Api.make(COORDINATOR, "/api/time-limits", """
                        {"jurisdiction":"network","kind":"policy","scientificName":"%s","binds":"anyone","starts":"received",
                         "ends":["toldAuthority","caseEnded"],"length":24,"lengthUnit":"hours","warnBeforeHours":6,
                         "extensionGrounds":["moulting"],"words":"made for a test","source":"made for a test",
                         "readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """.formatted(TURTLE)).getString("id");
        known.put("/api/time-limits", limit);
        known.put("/api/referrals", "01920000-0000-7000-8000-000000056001");
        String turtle = Api.get(COORDINATOR, "/api/taxa?q=" + TURTLE.replace(" ", "%20"))
                .getString("[0].id");
        known.put(
                "/api/taxon-synonyms",
                Api.make(COORDINATOR, "/api/taxon-synonyms", """
                        {"taxonId":"%s","kind":"vernacularName","name":"turtle of a walk","language":"en",
                         "source":"made for a test"}
                        """.formatted(turtle))
                        .getString("id"));
        known.put(
                "/api/species-listings",
                Api.make(COORDINATOR, "/api/species-listings", """
                        {"jurisdiction":"XZ","scientificName":"%s","listedAs":"threatened","source":"made for a test",
                         "readOn":"2026-01-05","reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                        """.formatted(TURTLE))
                        .getString("id"));
        known.put(
                "/api/clock-extensions",
                Api.make(COORDINATOR, "/api/cases/" + mother + "/clock-extensions", """
                        {"limitId":"%s","until":"2090-01-01T00:00:00Z","grantedBy":"the department",
                         "order":{"authority":"the department","number":"O-1","date":"2026-01-05","words":"fires"}}
                        """.formatted(limit))
                        .getString("id"));
        known.put(
                "/api/clock-notices",
                Api.make(COORDINATOR, "/api/cases/" + mother + "/notices", """
                        {"limitId":"%s","told":"the department","how":"phone","reference":"N-1"}
                        """.formatted(limit))
                        .getString("id"));
    }

    private static String newCase(World world, String incident, @Nullable String attendance) {
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","attendanceId":%s,
                         "animal":{"scientificName":"%s","sex":"female","lifeStage":"adult","naturalMarks":"a notch"},
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                        incident, attendance == null ? "null" : "\"" + attendance + "\"", TURTLE, world.rescuer))
                .getString("id");
    }

    private static void release(
            World world, Map<String, String> known, String incident, String attendance, String site) {
        String released = newCase(world, incident, attendance);
        String assessment = Api.make(
                        COORDINATOR,
                        "/api/assessments",
                        "{\"caseId\":\"%s\",\"siteId\":\"%s\"}".formatted(released, site))
                .getString("id");
        Json assessed = Api.get(COORDINATOR, "/api/assessments/" + assessment);
        Map<String, String> overrides = new TreeMap<>();
        for (String key :
                assessed.<String>getList("tests.findAll { it.verdict != 'pass' && it.lifting != 'notNeeded' }.key")) {
            overrides.put(key, "{\"key\":\"%s\",\"reason\":\"asked\"}".formatted(key));
        }
        String release = Api.make(COORDINATOR, "/api/releases", """
                        {"caseIds":["%s"],"assessmentIds":["%s"],"approvedBy":"Dr Vet","releasedByMemberId":"%s",
                         "overrides":[%s]}
                        """.formatted(
                                released, assessment, world.carer, String.join(",", overrides.values())))
                .getString("id");
        known.put("/api/assessments", assessment);
        known.put("/api/releases", release);
        known.put("/api/release-rules", UUID.randomUUID().toString());
    }
}
