package org.culvert.web.kept;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.culvert.platform.Role;
import org.culvert.platform.sight.SightTable;
import org.culvert.web.settings.SheetOperations;
import org.junit.jupiter.api.Test;

/**
 * Everything that the contract lets somebody change has a form on a page, for every role that may. The contract in {@code
 * openapi/} and the table of rights are the measure; what is told here is where else than by a sheet or a record that is kept.
 */
@QuarkusTest
class CapabilitiesResourceTest {
    /** Operations of pages made for them alone. */
    private static final String OWN_PAGES = """
            POST /api/accounts > POST /accounts
            POST /api/accounts/{id}/disabling > POST /accounts/{id}/disabling
            POST /api/accounts/{id}/enabling > POST /accounts/{id}/enabling
            POST /api/accounts/{id}/reset-links > POST /accounts/{id}/reset-link
            PUT /api/accounts/{id}/roles > POST /accounts/{id}/roles
            POST /api/annual-returns/signing > POST /returns/signing
            POST /api/annual-returns/{id}/supplements > POST /returns/{id}/supplements
            POST /api/assessments > POST /release-area/{id}/assessments
            POST /api/attendances/{id}/acceptance > POST /hand/attendances/{id}/steps, POST /desk/incidents/{id}/attendances/{attendanceId}/steps
            POST /api/attendances/{id}/arrival > POST /hand/attendances/{id}/steps, POST /desk/incidents/{id}/attendances/{attendanceId}/steps
            POST /api/attendances/{id}/departure > POST /hand/attendances/{id}/steps, POST /desk/incidents/{id}/attendances/{attendanceId}/steps
            POST /api/attendances/{id}/outcome > POST /hand/attendances/{id}/outcome, POST /desk/incidents/{id}/attendances/{attendanceId}/steps
            POST /api/calls > POST /desk/calls
            POST /api/calls/{id}/told-words > POST /desk/incidents/{id}/calls/{callId}/told
            POST /api/cases > POST /cases
            POST /api/cases/{id}/aftercare-plans > POST /cases/{id}/aftercare-plans
            POST /api/cases/{id}/body-measurements > POST /cases/{id}/body-measurements
            POST /api/cases/{id}/body/disposal > POST /cases/{id}/body/disposal
            POST /api/cases/{id}/care-entries > POST /care-day/entries, POST /hand/entries
            POST /api/cases/{id}/disease-suspicions > POST /cases/{id}/disease-suspicions
            POST /api/cases/{id}/fate > POST /cases/{id}/fate
            POST /api/cases/{id}/fitness-checks > POST /cases/{id}/fitness-checks
            POST /api/cases/{id}/hand-overs > POST /cases/{id}/hand-overs
            POST /api/cases/{id}/holds > POST /cases/{id}/holds
            POST /api/cases/{id}/non-release-decisions > POST /release-area/{id}/non-release-decisions
            POST /api/cases/{id}/photographs > POST /kept/{whole}/{id}/photographs
            POST /api/cases/{id}/placements > POST /cases/{id}/placements
            POST /api/cases/{id}/release-approvals > POST /release-area/{id}/approvals
            POST /api/cases/{id}/whereabouts > POST /cases/{id}/whereabouts
            POST /api/clutches > POST /clutches
            POST /api/clutches/{id}/candlings > POST /clutches/{id}
            POST /api/clutches/{id}/eggs > POST /clutches/{id}
            POST /api/clutches/{id}/eggs-left-inside > POST /clutches/{id}
            POST /api/clutches/{id}/entries/{entryId}/withdrawal > POST /clutches/{id}
            POST /api/clutches/{id}/failed-eggs > POST /clutches/{id}
            POST /api/clutches/{id}/hand-overs > POST /clutches/{id}
            POST /api/clutches/{id}/hatchings > POST /clutches/{id}
            POST /api/clutches/{id}/set-ups > POST /clutches/{id}
            POST /api/clutches/{id}/temperature-files > POST /clutches/{id}/temperature-files
            POST /api/clutches/{id}/temperatures > POST /clutches/{id}
            POST /api/disease-suspicions/{id}/telling > POST /cases/{id}/disease-suspicions/{suspicionId}/telling
            POST /api/hand-overs/{id}/acceptance > POST /cases/{id}/hand-overs/{handOverId}/acceptance
            POST /api/hand-overs/{id}/refusal > POST /cases/{id}/hand-overs/{handOverId}/refusal
            POST /api/holds/{id}/clearing > POST /cases/{id}/holds/{holdId}/clearing
            POST /api/hotspot-runs > POST /hotspots
            POST /api/hotspot-runs/{id}/cancellation > POST /hotspots/{id}/cancellation
            POST /api/incidents/{id}/attendances > POST /desk/incidents/{id}/attendances
            POST /api/incidents/{id}/closings > POST /desk/incidents/{id}/closings
            POST /api/incidents/{id}/gate-questions > POST /desk/incidents/{id}/attendances
            POST /api/incidents/{id}/joins > POST /desk/incidents/{id}/joins
            POST /api/incidents/{id}/photographs > POST /kept/{whole}/{id}/photographs
            PUT /api/incidents/{id}/place > POST /desk/incidents/{id}/calls/{callId}
            POST /api/land-areas/files > POST /settings/files/{kind}
            POST /api/members/{id}/calendars > POST /care-day/calendar
            POST /api/members/{id}/calendars/{calendarId}/revocation > POST /care-day/calendar/{id}/revocation
            POST /api/non-release-decisions/{id}/authority-notice > POST /non-release-decisions/{id}/notices
            POST /api/non-release-decisions/{id}/outcome > POST /non-release-decisions/{id}
            POST /api/non-release-decisions/{id}/permit-to-keep > POST /non-release-decisions/{id}/permits
            POST /api/non-release-decisions/{id}/second-opinion > POST /non-release-decisions/{id}
            POST /api/non-release-decisions/{id}/welfare-review > POST /non-release-decisions/{id}
            POST /api/people/search > POST /roster/people
            POST /api/photographs/{id}/original-openings > POST /kept/{whole}/{id}/photographs/{photographId}/original
            POST /api/record-files > POST /records
            POST /api/record-files/{id}/calling-off > POST /records/{id}/calling-off
            POST /api/record-files/{id}/reading > POST /records/{id}
            POST /api/record-files/{id}/trials > POST /records/{id}/trials
            POST /api/record-trials/{id}/taking > POST /records/trials/{id}/taking
            POST /api/release-rules > POST /release-rules
            POST /api/release-rules/{id}/reviews > POST /release-rules/{id}/reviews
            POST /api/release-sites/files > POST /settings/files/{kind}
            POST /api/releases > POST /releases
            POST /api/releases/{id}/animals/{caseId}/withdrawal > POST /releases/{id}/withdrawals
            POST /api/releases/{id}/photographs > POST /releases/{id}/photographs
            POST /api/releases/{id}/photographs/{photographId}/withdrawal > POST /releases/{id}/withdrawals
            POST /api/releases/{id}/sightings > POST /releases/{id}/sightings
            POST /api/releases/{id}/sightings/{sightingId}/withdrawal > POST /releases/{id}/withdrawals
            POST /api/releases/{id}/support-feeding-end > POST /releases/{id}/support-feeding-end
            POST /api/road-networks > POST /settings/files/{kind}
            POST /api/stretch-questions > GET /stretch
            POST /api/tokens > POST /account/tokens
            POST /api/tokens/{id}/revocation > POST /account/tokens/{id}/revocation
            POST /api/traffic-counts/files > POST /settings/files/{kind}
            POST /api/traffic-counts/files/trials > POST /settings/files/{kind}
            POST /api/visits > POST /cases/{id}/visits
            POST /api/visits/{id}/discharge > POST /cases/{id}/visits/{visitId}/discharge
            POST /api/visits/{id}/drug-orders > POST /cases/{id}/visits/{visitId}/drug-orders
            POST /api/visits/{id}/findings > POST /cases/{id}/visits/{visitId}/findings
            POST /api/visits/{id}/procedures > POST /cases/{id}/visits/{visitId}/procedures
            POST /api/visits/{id}/readings > POST /cases/{id}/visits/{visitId}/readings
            POST /api/works > POST /works
            """;

    /** Why no person needs a form. */
    private static final Map<String, String> NO_PERSON = Map.of(
            "POST /api/places/readings",
            "keeps nothing: fields for a place read what is typed by themselves, as on the desk");

    /** What an administrator may write by the table without seeing any: forms show what stands, and are for who sees it. */
    private static final Set<String> WITHOUT_SIGHT = Set.of("POST /api/release-sites", "PATCH /api/release-sites/{id}");

    @Inject
    Wholes wholes;

    private final SightTable table = SightTable.load();

    private static Set<String> changing() throws IOException {
        JsonNode contract = new ObjectMapper().readTree(Files.readString(Path.of("openapi/culvert.json")));
        Set<String> operations = new TreeSet<>();
        contract.get("paths").fields().forEachRemaining(path -> {
            if (path.getKey().startsWith("/api/")) {
                path.getValue().fieldNames().forEachRemaining(verb -> {
                    if (Set.of("post", "put", "patch", "delete").contains(verb)) {
                        operations.add(verb.toUpperCase(Locale.ROOT) + " " + path.getKey());
                    }
                });
            }
        });
        return operations;
    }

    private static Map<String, List<String>> ownPages() {
        Map<String, List<String>> pages = new TreeMap<>();
        OWN_PAGES.lines().filter(line -> !line.isBlank()).forEach(line -> {
            String[] told = line.strip().split(" > ");
            pages.put(told[0], Arrays.asList(told[1].split(", ")));
        });
        return pages;
    }

    /** Roles that reach a form, by operation. */
    private Map<String, Set<String>> reached() {
        Map<String, Set<String>> reached = new HashMap<>();
        SheetOperations.all().forEach(one -> reach(reached, one.operation(), table.rolesOf(one.reads())));
        for (Whole whole : wholes.all()) {
            for (KeptKind kind : whole.kinds()) {
                Set<String> roles = new TreeSet<>(table.rolesOf(whole.reads()));
                roles.retainAll(table.rolesOf(kind.reads()));
                kind.deeds().forEach(deed -> reach(reached, deed.act().operation(), roles));
            }
        }
        ownPages().forEach((operation, pages) -> pages.forEach(page -> reach(reached, operation, table.rolesOf(page))));
        return reached;
    }

    private static void reach(Map<String, Set<String>> reached, String operation, Set<String> roles) {
        reached.computeIfAbsent(operation, one -> new TreeSet<>()).addAll(roles);
    }

    @Test
    void everyOperationThatChangesSomethingHasAFormForEveryRoleThatMay() throws IOException {
        Map<String, Set<String>> reached = reached();
        List<String> missing = new ArrayList<>();
        for (String operation : changing()) {
            if (NO_PERSON.containsKey(operation)) {
                continue;
            }
            Set<String> without = new TreeSet<>(table.rolesOf(operation));
            without.removeAll(reached.getOrDefault(operation, Set.of()));
            if (WITHOUT_SIGHT.contains(operation)) {
                without.remove(Role.ADMIN);
            }
            if (!without.isEmpty()) {
                missing.add(operation + " for " + without);
            }
        }
        assertThat(missing).isEmpty();
    }

    /** What is told here of pages and operations is so: none of them has gone. */
    @Test
    void noFormIsToldOfThatIsNotThere() throws IOException {
        Set<String> changing = changing();
        assertThat(changing)
                .hasSizeGreaterThan(200)
                .containsAll(ownPages().keySet())
                .containsAll(NO_PERSON.keySet());
        ownPages().values().forEach(pages -> assertThat(table.operations()).containsAll(pages));
        for (Whole whole : wholes.all()) {
            assertThat(table.operations()).contains(whole.reads());
            for (KeptKind kind : whole.kinds()) {
                assertThat(table.operations()).as(kind.name()).contains(kind.reads());
                kind.deeds()
                        .forEach(
                                deed -> assertThat(changing).contains(deed.act().operation()));
            }
        }
    }
}
