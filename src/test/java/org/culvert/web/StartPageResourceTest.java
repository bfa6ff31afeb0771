package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.Role;
import org.culvert.platform.sight.SightTable;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** Where people begin, and how far everything is from there. */
@QuarkusTest
class StartPageResourceTest {
    private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");

    /** Parts of pages, what programs ask, and what is no place to go to. */
    private static final Set<String> NO_PLACES = Set.of(
            "/first",
            "/sign-in",
            "/desk/open",
            "/desk/reading",
            "/places/reading",
            "/hand/standing",
            "/hand/offline",
            "/hand/signed-out",
            "/returns/draft",
            // Of an incident, whose page leads there
            "/cases/new",
            // Of an assessment, as its case leads there
            "/releases/new",
            "/tiles/roads/tiles.json",
            "/ogc/api",
            "/ogc/collections",
            "/ogc/conformance");

    private static String page(String role, String path) {
        return Api.as(role)
                .header("Accept", "text/html")
                .get(path)
                .then()
                .extract()
                .asString();
    }

    private static Set<String> links(String html) {
        Set<String> links = new LinkedHashSet<>();
        Matcher found = LINK.matcher(html);
        while (found.find()) {
            links.add(found.group(1).replaceAll("\\?.*", ""));
        }
        return links;
    }

    private static String first(String role) {
        Answer answer = Api.as(role).withoutRedirects().get("/first").then().statusCode(303);
        return answer.extract().header("Location").replaceFirst("https?://[^/]+", "");
    }

    @Test
    void whoeverSignsInIsLedToWhereTheirWorkWaits() {
        World.shared();
        Map.of(
                        DISPATCHER,
                        "/desk",
                        COORDINATOR,
                        "/overview",
                        RESCUER,
                        "/hand",
                        CARER,
                        "/hand",
                        ROADS_AUTHORITY,
                        "/hotspots",
                        OFFICER,
                        "/returns",
                        ADMIN,
                        "/settings")
                .forEach((role, path) -> {
                    assertThat(first(role)).as(role).isEqualTo(path);
                    assertThat(page(role, "/")).as(role).contains("class=\"act\" href=\"" + path + "\"");
                });
        assertThat(Request.given().withoutRedirects().get("/first").header("Location"))
                .endsWith("/");
    }

    @Test
    void aBarHasNoMoreThanFiveEntries() {
        World.shared();
        for (String role : Role.ALL) {
            String html = page(role, "/");
            String bar = html.substring(html.indexOf("<nav"), html.indexOf("</nav>"));
            assertThat(links(bar)).as(role).hasSizeLessThanOrEqualTo(5).contains("/");
        }
    }

    @Test
    void everyPageIsTwoClicksAwayAtMost() {
        World.shared();
        SightTable table = SightTable.load();
        for (String role : Role.ALL) {
            Set<String> reached = new HashSet<>();
            String begin = first(role);
            reached.add(begin);
            Set<String> once = links(page(role, begin));
            reached.addAll(once);
            // The bar is on each page, so that each leads to the start page
            assertThat(once).as(role + " at " + begin).contains("/");
            reached.addAll(links(page(role, "/")));
            List<String> missing = table.operations().stream()
                    .filter(operation -> operation.startsWith("GET /")
                            && !operation.startsWith("GET /api/")
                            && !operation.contains("{"))
                    .filter(operation -> table.rolesOf(operation).contains(role)
                            || table.rolesOf(operation).contains(SightTable.PUBLIC))
                    .map(operation -> operation.substring("GET ".length()))
                    .filter(path -> !NO_PLACES.contains(path) && !reached.contains(path))
                    // Not open to everybody here
                    .filter(path -> !path.equals("/hotspots")
                            || table.rolesOf("GET /api/hotspot-runs").contains(role))
                    .toList();
            assertThat(missing)
                    .as("pages that a " + role + " may open and does not find")
                    .isEmpty();
        }
    }

    @Test
    void whatIsLinkedOpens() {
        World.shared();
        for (String role : Role.ALL) {
            for (String link : links(page(role, "/"))) {
                if (link.matches("/(q/openapi|.*\\.(css|js))")) {
                    continue;
                }
                assertThat(Api.as(role).header("Accept", "text/html").get(link).statusCode())
                        .as(role + " " + link)
                        .isEqualTo(200);
            }
        }
    }
}
