package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.support.Request;
import org.junit.jupiter.api.Test;

/** RFC 9457, section 3.1.1: a type that is an address should lead to a description for people. */
@QuarkusTest
class ProblemPageResourceTest {
    @Test
    void theTypeOfAProblemLeadsToItsPage() {
        String type = Request.given()
                .get("/api/region/nothing-there")
                .then()
                .statusCode(404)
                .extract()
                .path("type");
        Request.given()
                .get(type)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .body(containsString("What to do"));
        for (ProblemPage page : ProblemPage.ALL) {
            String html = Request.given().get("/problems/" + page.type()).asString();
            assertThat(html).contains(page.remedy().split("[&'<]")[0]);
        }
    }

    @Test
    void pagesBringNothingFromAnotherHost() {
        Request.given()
                .get("/")
                .then()
                .statusCode(200)
                .header("Content-Security-Policy", containsString("default-src 'self'"));
    }
}
