package org.culvert.exchange.occurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * What a Darwin Core Archive says, held against the Darwin Core text guide (dwc.tdwg.org/text; its schema in tdwg/dwc,
 * guides/text/tdwg_dwc_text.xsd, commit 1660e71) and GBIF's required terms for occurrences (ipt.gbif.org, manual, occurrence
 * data).
 */
@QuarkusTest
class ArchiveResourceTest {
    private static final String DWC = "http://rs.tdwg.org/dwc/terms/";

    /** As listed in tdwg/dwc, build/xml/occurrence_core_list.csv, commit 1d8e9d2; retyped, those that an archive may use. */
    private static final Set<String> TERMS = Set.of(
            DWC + "occurrenceID",
            DWC + "basisOfRecord",
            DWC + "occurrenceStatus",
            DWC + "eventDate",
            DWC + "eventRemarks",
            DWC + "scientificName",
            DWC + "taxonRank",
            DWC + "kingdom",
            DWC + "vernacularName",
            DWC + "individualCount",
            DWC + "decimalLatitude",
            DWC + "decimalLongitude",
            DWC + "geodeticDatum",
            DWC + "coordinateUncertaintyInMeters",
            DWC + "countryCode",
            DWC + "locality",
            DWC + "dataGeneralizations",
            DWC + "informationWithheld",
            DWC + "occurrenceRemarks",
            "http://purl.org/dc/terms/license");

    private String group;
    private String taxon;

    @BeforeEach
    void makeWorld() {
        World.shared();
        String letters = UUID.randomUUID().toString().replaceAll("[^a-f]", "x").replace("-", "");
        group = "archived-" + letters;
        taxon = "Archivum " + letters;
        kind("");
    }

    private void kind(String sensitive) {
        Api.post(COORDINATOR, "/api/taxon-groups", """
                [{"key":"%s","name":"%s","pouch":false,"clutches":false,"introduced":false}]
                """.formatted(group, group)).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"kept, \\"in\\" an archive","taxonRank":"species","taxonGroup":"%s"%s}]
                """.formatted(taxon, group, sensitive))
                .statusCode(200);
    }

    private String found(String animal, String when) {
        return Api.make(DISPATCHER, "/api/calls", """
                        {"receivedAt":"%s"%s,"cause":"collisionWithVehicle","animals":[%s],
                         "caller":{"name":"A Driver","phone":"555 0177"},"words":"by my house in the lane",
                         "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                        """.formatted(when, ",\"happenedAt\":\"" + when + "\"", animal))
                .getString("incidentId");
    }

    private String one() {
        return "{\"scientificName\":\"" + taxon + "\"}";
    }

    private static Map<String, byte[]> archive(@Nullable String role, String filter) throws IOException {
        Request request = role == null ? Request.given() : Api.as(role);
        byte[] zip = request.get("/api/occurrences/archive.zip" + filter)
                .then()
                .statusCode(200)
                .contentType("application/zip")
                .extract()
                .asByteArray();
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (var in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        assertThat(files).containsOnlyKeys("occurrence.csv", "meta.xml", "eml.xml");
        return files;
    }

    private List<CSVRecord> rows(@Nullable String role) throws IOException {
        String text = new String(archive(role, "?taxonGroup=" + group).get("occurrence.csv"), StandardCharsets.UTF_8);
        return CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(text))
                .getRecords();
    }

    private static Document xml(byte[] octets) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(octets));
    }

    private static List<Element> children(Element parent) {
        List<Element> children = new ArrayList<>();
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }

    /** One core with files, an id, and fields, in this order; each index once, within the header, with a term of the standard. */
    @Test
    void theMetafileIsAsTheTextGuideWantsIt() throws Exception {
        found(one(), "1999-03-05T08:00:00Z");
        Map<String, byte[]> files = archive(null, "");
        Element archive = xml(files.get("meta.xml")).getDocumentElement();
        assertThat(archive.getNamespaceURI()).isEqualTo("http://rs.tdwg.org/dwc/text/");
        assertThat(archive.getLocalName()).isEqualTo("archive");
        assertThat(archive.getAttribute("metadata")).isEqualTo("eml.xml");
        assertThat(children(archive)).hasSize(1);
        Element core = children(archive).get(0);
        assertThat(core.getLocalName()).isEqualTo("core");
        assertThat(core.getAttribute("rowType")).isEqualTo(DWC + "Occurrence");
        assertThat(core.getAttribute("encoding")).isEqualTo("UTF-8");
        assertThat(core.getAttribute("fieldsTerminatedBy")).isEqualTo(",");
        assertThat(core.getAttribute("linesTerminatedBy")).isEqualTo("\\r\\n");
        assertThat(core.getAttribute("fieldsEnclosedBy")).isEqualTo("\"");
        assertThat(core.getAttribute("ignoreHeaderLines")).isEqualTo("1");
        List<Element> parts = children(core);
        assertThat(parts.get(0).getLocalName()).isEqualTo("files");
        assertThat(children(parts.get(0)).get(0).getTextContent()).isEqualTo("occurrence.csv");
        assertThat(parts.get(1).getLocalName()).isEqualTo("id");
        assertThat(parts.get(1).getAttribute("index")).isEqualTo("0");
        List<String> header =
                List.of(new String(files.get("occurrence.csv"), StandardCharsets.UTF_8).split("\r\n", 2)[0].split(","));
        List<Element> fields = parts.subList(2, parts.size());
        assertThat(fields).hasSize(header.size());
        for (int i = 0; i < fields.size(); i++) {
            Element field = fields.get(i);
            assertThat(field.getLocalName()).isEqualTo("field");
            assertThat(field.getNamespaceURI()).isEqualTo("http://rs.tdwg.org/dwc/text/");
            assertThat(field.getAttribute("index")).isEqualTo(Integer.toString(i));
            assertThat(TERMS).contains(field.getAttribute("term"));
            assertThat(field.getAttribute("term")).endsWith("/" + header.get(i));
        }
        assertThat(fields).extracting(field -> field.getAttribute("term")).doesNotHaveDuplicates();
        assertThat(header.get(0)).isEqualTo("occurrenceID");
        assertThat(MetafileRules.brokenBy(
                        xml(files.get("meta.xml")), files.keySet(), Map.of("occurrence.csv", header.size())))
                .isEmpty();
    }

    /** Elements that EML 2.1.1 requires of a dataset, in the order of its schema: title, creator, then pubDate, contact. */
    @Test
    void thePaperSaysWhoPublishesUnderWhichLicence() throws Exception {
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/disclosure-settings"))
                .body("""
                        {"smallestCount":5,"publicDelayDays":30,"source":"the network's own",
                         "archiveLicence":"https://creativecommons.org/licenses/by/4.0/","archiveContact":"data@example.org"}
                        """)
                .put("/api/disclosure-settings")
                .then()
                .statusCode(200)
                .body("archiveContact", equalTo("data@example.org"));
        found(one(), "1999-03-05T08:00:00Z");
        Map<String, byte[]> files = archive(OFFICER, "?taxonGroup=" + group);
        Element eml = xml(files.get("eml.xml")).getDocumentElement();
        assertThat(eml.getNamespaceURI()).isEqualTo("eml://ecoinformatics.org/eml-2.1.1");
        assertThat(eml.getAttribute("packageId")).startsWith("culvert-occurrences/");
        assertThat(eml.getAttribute("system")).isNotEmpty();
        Element dataset = children(eml).get(0);
        assertThat(children(dataset))
                .extracting(Node::getLocalName)
                .containsExactly(
                        "title",
                        "creator",
                        "metadataProvider",
                        "pubDate",
                        "language",
                        "abstract",
                        "intellectualRights",
                        "contact");
        assertThat(children(dataset))
                .allSatisfy(part -> assertThat(part.getTextContent()).isNotBlank());
        String network = Api.get(OFFICER, "/api/organisations?kind=network").getString("[0].name");
        Element creator = children(dataset).get(1);
        assertThat(children(creator).get(0).getLocalName()).isEqualTo("organizationName");
        assertThat(children(creator).get(0).getTextContent()).isEqualTo(network);
        assertThat(children(dataset).get(3).getTextContent()).matches("\\d{4}-\\d\\d-\\d\\d");
        assertThat(new String(files.get("eml.xml"), StandardCharsets.UTF_8))
                .contains("<ulink url=\"https://creativecommons.org/licenses/by/4.0/\">");
        assertThat(rows(OFFICER))
                .allSatisfy(row ->
                        assertThat(row.get("license")).isEqualTo("https://creativecommons.org/licenses/by/4.0/"));
        // Another package for other content, the same for the same
        assertThat(packageId(archive(OFFICER, "?taxonGroup=" + group))).isEqualTo(eml.getAttribute("packageId"));
        found(one(), "1998-03-05T08:00:00Z");
        assertThat(packageId(archive(OFFICER, "?taxonGroup=" + group))).isNotEqualTo(eml.getAttribute("packageId"));
    }

    private static String packageId(Map<String, byte[]> files) throws Exception {
        return xml(files.get("eml.xml")).getDocumentElement().getAttribute("packageId");
    }

    /** occurrenceID, basisOfRecord, scientificName and eventDate in every row, and no identifier twice. */
    @Test
    void everyRowHasWhatGbifRequires() throws Exception {
        found(one(), "1999-03-05T08:00:00Z");
        found("{\"taxonGroup\":\"" + group + "\"}", "1999-04-05T08:00:00Z");
        Api.make(DISPATCHER, "/api/calls", """
                {"receivedAt":"1999-05-05T20:00:00Z","cause":"collisionWithVehicle","animals":[%s],
                 "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                """.formatted(one()));
        for (String role : new String[] {null, OFFICER}) {
            List<CSVRecord> rows = rows(role);
            assertThat(rows).as("as %s", role).hasSize(3);
            assertThat(rows).extracting(row -> row.get("occurrenceID")).doesNotHaveDuplicates();
            assertThat(rows).allSatisfy(row -> {
                assertThat(row.get("occurrenceID")).matches("[0-9a-f]{32}");
                assertThat(row.get("basisOfRecord")).isEqualTo("HumanObservation");
                assertThat(row.get("occurrenceStatus")).isEqualTo("present");
                assertThat(row.get("scientificName")).isNotEmpty();
                // ISO 8601-1: a day, an instant, or a span that is closed at both ends
                assertThat(row.get("eventDate"))
                        .matches("\\d{4}(-\\d\\d-\\d\\d(T[0-9:.]+Z)?)?(/\\d{4}-\\d\\d-\\d\\d(T[0-9:.]+Z)?)?");
                assertThat(row.get("geodeticDatum")).isEqualTo("EPSG:4326");
                assertThat(Double.parseDouble(row.get("coordinateUncertaintyInMeters")))
                        .isPositive();
                assertThat(row.get("countryCode")).isEqualTo("AU");
            });
        }
        List<CSVRecord> exact = rows(OFFICER);
        assertThat(exact).anySatisfy(row -> {
            assertThat(row.get("scientificName"))
                    .as("which kind of the group is not known")
                    .isEqualTo("Animalia");
            assertThat(row.get("taxonRank")).isEqualTo("kingdom");
            assertThat(row.get("vernacularName")).isEqualTo(group);
        });
        assertThat(exact).anySatisfy(row -> {
            assertThat(row.get("eventRemarks")).startsWith("When it happened is not known");
            assertThat(row.get("eventDate")).isEqualTo("1999-05-05");
        });
        assertThat(exact)
                .anySatisfy(row -> assertThat(row.get("vernacularName")).isEqualTo("kept, \"in\" an archive"));
    }

    @Test
    void sensitivePlacesAreToldRoughlyAndNobodyIsNamed() throws Exception {
        kind(",\"sensitivityGridDegrees\":0.1,\"sensitivityReason\":\"kept\",\"sensitivityReviewBy\":\"2090-01-01\"");
        String incident = found(one(), "1997-03-05T08:00:00Z");
        CSVRecord told = rows(null).get(0);
        assertThat(told.get("decimalLatitude")).isEqualTo("-30.55");
        assertThat(told.get("decimalLongitude")).isEqualTo("150.05");
        assertThat(told.get("eventDate")).isEqualTo("1997");
        assertThat(told.get("dataGeneralizations")).contains("0.1 degree");
        assertThat(told.get("informationWithheld")).contains("season", "Who told of it");
        assertThat(told.get("locality")).isEmpty();
        for (String role : new String[] {null, CARER, COORDINATOR, OFFICER}) {
            Map<String, byte[]> files = archive(role, "?taxonGroup=" + group);
            for (byte[] file : files.values()) {
                assertThat(new String(file, StandardCharsets.UTF_8))
                        .as("as %s", role)
                        .doesNotContain("A Driver", "555 0177", "in the lane", incident, "test-");
            }
        }
        CSVRecord exact = rows(OFFICER).get(0);
        assertThat(exact.get("decimalLatitude")).startsWith("-30.50012");
        assertThat(exact.get("eventDate")).isEqualTo("1997-03-05T08:00:00Z");
        assertThat(exact.get("occurrenceID")).isEqualTo(told.get("occurrenceID"));
        assertThat(exact.get("dataGeneralizations")).isEmpty();
    }

    @Test
    void aReleaseIsNoOccurrence() throws Exception {
        World world = World.shared();
        String incident = found(one(), "2020-03-05T08:00:00Z");
        String caseId = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2020-03-05T08:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, taxon, world.rescuer))
                .getString("id");
        List<CSVRecord> before = rows(OFFICER);
        assertThat(before).hasSize(1);
        release(world, caseId);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + caseId).getString("fate.fate"))
                .isEqualTo("released");
        List<CSVRecord> after = rows(OFFICER);
        assertThat(after).hasSize(1);
        assertThat(after.get(0).toList()).isEqualTo(before.get(0).toList());
        assertThat(after.get(0).get("eventDate")).isEqualTo("2020-03-05T08:00:00Z");
    }

    private static void release(World world, String caseId) {
        String site = Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"Lagoon","jurisdiction":"XZ","decimalLatitude":-30.52,"decimalLongitude":150.035,
                         "coordinateUncertaintyInMeters":20,"habitat":"wetland","taxonGroups":["turtles"]}
                        """).getString("id");
        World.signFit(caseId, Clocks.now().toString());
        String assessment = Api.make(
                        COORDINATOR,
                        "/api/assessments",
                        "{\"caseId\":\"%s\",\"siteId\":\"%s\"}".formatted(caseId, site))
                .getString("id");
        Json assessed = Api.get(COORDINATOR, "/api/assessments/" + assessment);
        List<String> overrides = new ArrayList<>();
        for (String key :
                assessed.<String>getList("tests.findAll { it.verdict != 'pass' && it.lifting != 'notNeeded' }.key")) {
            overrides.add("{\"key\":\"%s\",\"reason\":\"asked\"}".formatted(key));
        }
        Api.make(COORDINATOR, "/api/releases", """
                {"caseIds":["%s"],"assessmentIds":["%s"],"approvedBy":"Dr Vet","releasedByMemberId":"%s","overrides":[%s]}
                """.formatted(
                        caseId, assessment, world.carer, String.join(",", overrides)));
    }

    /** Page after page of the list, and the archive, say the same. */
    @Test
    void theArchiveAndTheListAgree() throws Exception {
        for (int day = 1; day <= 9; day++) {
            found(one(), "1996-03-0" + day + "T08:00:00Z");
        }
        for (String role : List.of(OFFICER, CARER)) {
            Json list = Api.get(role, "/api/occurrences?limit=1000&taxonGroup=" + group);
            List<CSVRecord> rows = rows(role);
            assertThat(rows)
                    .extracting(row -> row.get("occurrenceID"))
                    .containsExactlyElementsOf(list.<String>getList("items.occurrenceID"));
            assertThat(rows)
                    .extracting(row -> Double.parseDouble(row.get("decimalLatitude")))
                    .containsExactlyElementsOf(list.<Number>getList("items.decimalLatitude").stream()
                            .map(Number::doubleValue)
                            .toList());
        }
        Request.given()
                .get("/api/occurrences/archive.zip?asOf=" + Instant.parse("2020-01-01T00:00:00Z"))
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("asOf"));
        Request.given().get("/api/occurrences/archive.zip?bbox=1,2").then().statusCode(400);
    }
}
