package org.culvert.support;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Held against the JDK's own server: what reaches it, and what a test is told of its answers. */
class RequestTest {
    private record Got(String method, String target, HttpHeaders headers, String body) {
        String header(String name) {
            return headers.firstValue(name).orElse(null);
        }
    }

    private static final List<Got> GOT = new CopyOnWriteArrayList<>();
    private static HttpServer server;

    @BeforeAll
    static void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> answer(exchange, 404, "application/problem+json", """
            {"status":404,"errors":[{"field":"place.latitude","wanted":"a number"}],"ratio":0.5}\
            """));
        server.createContext("/api/clutches/7", exchange -> {
            exchange.getResponseHeaders().add("ETag", "\"3\"");
            answer(exchange, 200, "application/json", "{\"version\":3}");
        });
        server.createContext("/latin", exchange -> answer(exchange, 200, "text/plain;charset=ISO-8859-1", "caf\u00e9"));
        server.createContext("/away", exchange -> {
            exchange.getResponseHeaders().add("Location", "/away/there?x=1");
            exchange.getResponseHeaders().add("Set-Cookie", "culvert=s3=; Path=/; HttpOnly");
            exchange.getResponseHeaders().add("Set-Cookie", "other=");
            answer(exchange, 303, "text/html", "");
        });
        server.createContext("/away/there", exchange -> answer(exchange, 200, "text/html", "<p>There"));
        server.createContext("/long", exchange -> answer(exchange, 500, "text/html", "x".repeat(100_000)));
        server.start();
    }

    @AfterAll
    static void stop() {
        server.stop(0);
    }

    @BeforeEach
    void forget() {
        GOT.clear();
    }

    private static void answer(HttpExchange exchange, int status, String type, String body) throws IOException {
        try (exchange) {
            GOT.add(new Got(
                    exchange.getRequestMethod(),
                    exchange.getRequestURI().toString(),
                    HttpHeaders.of(exchange.getRequestHeaders(), (name, value) -> true),
                    new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8)));
            exchange.getResponseHeaders().set("Content-Type", type);
            byte[] octets = body.getBytes(type.contains("8859") ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
            boolean none = octets.length == 0 || exchange.getRequestMethod().equals("HEAD");
            exchange.sendResponseHeaders(status, none ? -1 : octets.length);
            if (!none) {
                exchange.getResponseBody().write(octets);
            }
        }
    }

    private static String at(String path) {
        return "http://localhost:" + server.getAddress().getPort() + path;
    }

    private static Got only() {
        assertThat(GOT).hasSize(1);
        return GOT.get(0);
    }

    @Test
    void whatIsSetIsSent() {
        Request.given()
                .basic("test-carer", "secr\u00e9t")
                .contentType("text/csv")
                .contentType(Request.JSON)
                .accept("text/html")
                .header("X-Of-Mine", "1")
                .header("X-Of-Mine", "2")
                .cookie("a", "1")
                .cookies(Map.of("b", "2"))
                .queryParam("q", List.of("a b&c", "+1"))
                .queryParams(Map.of("n", 5))
                .body("{\"name\":\"\u00e9\"}")
                .put(at("/some?first=x"));
        Got got = only();
        assertThat(got.method()).isEqualTo("PUT");
        assertThat(got.target()).isEqualTo("/some?first=x&q=a+b%26c&q=%2B1&n=5");
        // RFC 7617, section 2.1, in UTF-8: test-carer:secrét
        assertThat(got.header("Authorization")).isEqualTo("Basic dGVzdC1jYXJlcjpzZWNyw6l0");
        assertThat(got.headers().allValues("Content-Type")).containsExactly("application/json");
        assertThat(got.headers().allValues("Accept")).containsExactly("text/html");
        assertThat(got.headers().allValues("X-Of-Mine")).containsExactly("1", "2");
        assertThat(got.header("Cookie")).isEqualTo("a=1; b=2");
        assertThat(got.body()).isEqualTo("{\"name\":\"\u00e9\"}");
    }

    @Test
    void formsAreEncodedAndSayThatTheyAreForms() {
        Request.given()
                .formParam("words", List.of("5 % & more", "é"))
                .formParam("none", null)
                .cookie("none", null)
                .formParams(Map.of("day", List.of(1, 2)))
                .post(at("/some"));
        assertThat(only().body()).isEqualTo("words=5+%25+%26+more&words=%C3%A9&day=1&day=2");
        assertThat(only().header("Content-Type")).isEqualTo(Request.FORM);
        assertThat(only().header("Cookie")).isNull();
    }

    @Test
    void whatNoAddressMayHaveIsEncodedAndTheRestIsLeft() {
        Request.given().get(at("/a b/%2F/{id}?at=2026-01-01T00:00:00+10:00&q=\"5 %\"&bbox=1,2&x=é"));
        assertThat(only().target())
                .isEqualTo("/a%20b/%2F/%7Bid%7D?at=2026-01-01T00:00:00+10:00&q=%225%20%25%22&bbox=1,2&x=%C3%A9");
        assertThat(only().header("Accept")).isEqualTo("*/*");
        assertThat(only().body()).isEmpty();
    }

    @Test
    void changesHaveKeysOfTheirOwn() {
        Request twice = Request.given().body("{}");
        twice.post(at("/some"));
        twice.post(at("/some"));
        twice.get(at("/some"));
        assertThat(GOT.get(0).header(Request.KEY)).isNotEqualTo(GOT.get(1).header(Request.KEY));
        assertThat(UUID.fromString(GOT.get(0).header(Request.KEY))).isNotNull();
        assertThat(GOT.get(2).header(Request.KEY)).isNull();
        GOT.clear();
        Request.given().withoutKey().delete(at("/some"));
        assertThat(only().header(Request.KEY)).isNull();
        GOT.clear();
        Request.given().header("idempotency-key", "mine").patch(at("/some"));
        assertThat(only().headers().allValues(Request.KEY)).containsExactly("mine");
    }

    @Test
    void theTagOfTheRecordIsReadFirst() {
        Request.given().basic("a", "b").post(at("/api/clutches/7/candlings"));
        assertThat(GOT).extracting(Got::method).containsExactly("GET", "POST");
        assertThat(GOT).extracting(got -> got.header("Authorization")).containsOnly("Basic YTpi");
        assertThat(GOT.get(1).header("If-Match")).isEqualTo("\"3\"");
        GOT.clear();
        Request.given().withoutTag().post(at("/api/clutches/7/candlings"));
        assertThat(only().header("If-Match")).isNull();
        GOT.clear();
        Request.given().header("If-Match", "\"2\"").post(at("/api/clutches/7/candlings"));
        assertThat(only().headers().allValues("If-Match")).containsExactly("\"2\"");
    }

    @Test
    void redirectsOfWhatIsReadAreFollowedUnlessTheTestWantsThem() {
        Request.given().get(at("/away")).then().statusCode(200).body(equalTo("<p>There"));
        Request.given()
                .withoutRedirects()
                .get(at("/away"))
                .then()
                .statusCode(303)
                .header("Location", "/away/there?x=1")
                .cookie("culvert", equalTo("s3="))
                .cookie("other", equalTo(""))
                .cookie("none", nullValue());
        Request.given().post(at("/away")).then().statusCode(303);
    }

    @Test
    void whatIsAsWantedPasses() {
        Answer answer = Request.given().get(at("/some"));
        answer.then()
                .statusCode(404)
                .statusCode(greaterThan(399))
                .contentType("application/problem+json")
                .contentType(startsWith("application/"))
                .header("Content-Type", equalTo("application/problem+json"))
                .header("No-Such", nullValue())
                .body("errors.field", hasItem("place.latitude"))
                .body("ratio", equalTo(0.5))
                .body("none.such", nullValue())
                .body(containsString("wanted"));
        assertThat(answer.<Integer>path("status")).isEqualTo(404);
        assertThat(answer.jsonPath().getInt("errors.size()")).isEqualTo(1);
        assertThat(Request.given().get(at("/latin")).contentType("text/plain").asString())
                .isEqualTo("caf\u00e9");
        assertThat(Request.given().get(at("/latin")).asByteArray()).hasSize(4);
        Request.given().get(at("/latin")).contentType("TEXT/plain; charset=iso-8859-1");
        assertThat(Request.given().head(at("/some")).asString()).isEmpty();
    }

    @Test
    void aFailureSaysWhatWasAskedWantedAndAnswered() {
        Answer answer = Request.given()
                .basic("test-carer", "x")
                .contentType(Request.JSON)
                .body("{\"words\":\"sent\"}")
                .post(at("/some?a=1"));
        assertThatThrownBy(() -> answer.then().statusCode(201))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("POST /some?a=1 by test-carer")
                .hasMessageContaining("wanted: the status: 201")
                .hasMessageContaining("was 404")
                .hasMessageContaining("sent: {\"words\":\"sent\"}")
                .hasMessageContaining("answered: 404 application/problem+json")
                .hasMessageContaining("\"field\":\"place.latitude\"");
        assertThatThrownBy(() -> answer.then().body("errors[0].field", equalTo("place.longitude")))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("errors[0].field: \"place.longitude\"")
                .hasMessageContaining("was \"place.latitude\"")
                .hasMessageContaining("answered: 404");
    }

    @Test
    void whatIsNotAsWantedFails() {
        Answer answer = Request.given().get(at("/some"));
        List<Runnable> wrong = List.of(
                () -> answer.statusCode(greaterThan(404)),
                () -> answer.header("Content-Type", "application/json"),
                () -> answer.header("No-Such", equalTo("x")),
                () -> answer.contentType("application/json"),
                () -> answer.contentType("application/problem+json;charset=UTF-8"),
                () -> answer.contentType(startsWith("text/")),
                () -> answer.cookie("culvert", equalTo("x")),
                () -> answer.body(containsString("nothing of the kind")),
                () -> answer.body("ratio", equalTo(0.25)),
                () -> answer.body("ratio", nullValue()),
                () -> answer.body("status", equalTo("404")),
                () -> answer.body("none", equalTo(1)),
                () -> answer.body("errors.size()", equalTo(2)),
                () -> answer.body("errors.sum()", equalTo(2)),
                () -> answer.body("none.size()", equalTo(0)),
                () -> Request.given().get(at("/away")).body("a", nullValue()));
        for (int i = 0; i < wrong.size(); i++) {
            assertThatThrownBy(wrong.get(i)::run).as("number " + i).isInstanceOf(AssertionError.class);
        }
        assertThatThrownBy(() -> Request.given().get(at("/away")).body("a", nullValue()))
                .hasMessageContaining("<p>There");
    }

    @Test
    void aLongBodyIsCut() {
        assertThatThrownBy(() -> Request.given().get(at("/long")).then().statusCode(200))
                .hasMessageContaining("xxx... (100000 characters)")
                .satisfies(e -> assertThat(e.getMessage()).hasSizeLessThan(3000));
    }

    @Test
    void whoDoesNotAnswerIsNamed() {
        assertThatThrownBy(() -> Request.given().get("http://localhost:1/x"))
                .hasMessageContaining("GET /x got no answer from http://localhost:1/x");
    }
}
