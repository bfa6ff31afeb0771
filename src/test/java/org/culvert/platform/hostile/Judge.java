package org.culvert.platform.hostile;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.support.Request;
import org.jspecify.annotations.Nullable;

/** Says what is wrong with an answer to something hostile. */
final class Judge {
    /** What a stack, a class or a statement would show. The tables of hostile values hold none of these words. */
    private static final Pattern INSIDES = Pattern.compile(
            "java\\.|jakarta\\.|org\\.(culvert|hibernate|postgresql|jboss)|com\\.fasterxml|Exception|\\bat [a-z]+\\.[a-z]+"
                    + "|(?i:insert into|update \\w+ set|select .* from)|Entry\\b|Correction\\b|RESTEASY");

    private final Map<String, Boolean> pages = new HashMap<>();

    @Nullable
    String judge(HttpResponse<String> answer) throws IOException {
        int status = answer.statusCode();
        String type = answer.headers().firstValue("Content-Type").orElse("none");
        if (status >= 500) {
            return "status " + status;
        }
        if (type.startsWith("text/html")) {
            return page(answer.body());
        }
        if (status < 400) {
            return null;
        }
        return type.startsWith("application/problem+json") ? problem(status, answer.body()) : "content type " + type;
    }

    /** A page may show a hostile text, but never as anything but text. */
    private static @Nullable String page(String body) {
        if (body.contains("<script>window.hit") || body.contains("<img src=x")) {
            return "a text becomes a part of the page";
        }
        Matcher insides = INSIDES.matcher(body.replaceAll("<[^>]*>", " "));
        return insides.find() ? "a page shows " + insides.group() : null;
    }

    private @Nullable String problem(int status, String body) throws IOException {
        JsonNode problem = Contract.JSON.readTree(body);
        for (String field : List.of("type", "title", "status", "detail", "instance")) {
            if (problem.path(field).asText().isBlank()) {
                return "no " + field;
            }
        }
        if (problem.get("status").asInt() != status) {
            return "another status inside";
        }
        String type = problem.get("type").asText();
        if (!pages.computeIfAbsent(type, Judge::isPage)) {
            return "a type without a page";
        }
        if (status == 400 && type.endsWith("/invalid") && problem.path("errors").isEmpty()) {
            return "no errors";
        }
        for (JsonNode error : problem.path("errors")) {
            for (String field : List.of("field", "detail", "wanted")) {
                if (error.path(field).asText().isBlank()) {
                    return "an error without " + field;
                }
            }
        }
        Matcher insides = INSIDES.matcher(
                problem.path("title").asText() + " " + problem.path("detail").asText() + " " + problem.path("errors"));
        return insides.find() ? "shows " + insides.group() : null;
    }

    private static boolean isPage(String type) {
        return type.startsWith("/problems/") && Request.given().get(type).statusCode() == 200;
    }

    /** The texts of a field, wherever in an answer it is. */
    static List<String> texts(String json, String field) throws IOException {
        List<String> texts = new ArrayList<>();
        if (!json.isBlank()) {
            for (JsonNode value : Contract.JSON.readTree(json).findValues(field)) {
                if (value.isTextual()) {
                    texts.add(value.asText());
                }
                for (JsonNode element : value) {
                    if (element.isTextual()) {
                        texts.add(element.asText());
                    }
                }
            }
        }
        return texts;
    }
}
