package org.culvert.web.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.platform.Patience;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;

/** The forms of old records as a browser without scripts reads and sends them. */
final class RecordForms {
    private static final Pattern OPTION = Pattern.compile("<option value=\"([^\"]*)\"( selected)?>");
    private static final String BOUNDARY = "a-boundary-of-forms";

    private final String role;
    private final String secret;

    RecordForms(String role) {
        this.role = role;
        this.secret = Api.as(role).get("/records").cookie("culvert-form");
    }

    String page(String path) {
        return Api.as(role)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    /** Sends a file as multipart/form-data (RFC 7578). */
    Answer bring(String fileName, byte[] octets, String key) {
        var body = new ByteArrayOutputStream();
        for (Map.Entry<String, String> field :
                Map.of("csrf", secret, "key", key).entrySet()) {
            body.writeBytes(("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + field.getKey()
                            + "\"\r\n\r\n" + field.getValue() + "\r\n")
                    .getBytes(StandardCharsets.UTF_8));
        }
        body.writeBytes(("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + fileName
                        + "\"\r\nContent-Type: text/csv\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(octets);
        body.writeBytes(("\r\n--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return Api.as(role)
                .contentType("multipart/form-data; boundary=" + BOUNDARY)
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .body(body.toByteArray())
                .post("/records")
                .then();
    }

    /** Brings a file; where its page is. */
    String brought(String fileName, String text) {
        return path(bring(
                fileName,
                text.getBytes(StandardCharsets.UTF_8),
                UUID.randomUUID().toString()));
    }

    /** Where an answer leads to. */
    static String path(Answer sent) {
        String next = sent.statusCode(303).extract().header("Location");
        assertThat(next).contains("/records");
        return next.replaceFirst("^https?://[^/]+", "");
    }

    Answer send(String path, Map<String, ?> fields) {
        Map<String, Object> whole =
                new HashMap<>(Map.of("key", UUID.randomUUID().toString()));
        whole.putAll(fields);
        return Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParams(whole)
                .post(path)
                .then();
    }

    /** What the form of a file's page would send as it is shown. */
    Map<String, List<String>> shown(String path) {
        return read(page(path));
    }

    /** What the form of a page would send as it is shown. */
    static Map<String, List<String>> read(String page) {
        String form = page.substring(page.indexOf("class=\"reading\""));
        form = form.substring(0, form.indexOf("</form>"));
        Map<String, List<String>> fields = new LinkedHashMap<>();
        Matcher field = Pattern.compile("<(input|select)\\b([^>]*)>").matcher(form);
        while (field.find()) {
            String name = attribute(field.group(2), "name");
            if (name == null || List.of("csrf", "key").contains(name)) {
                continue;
            }
            String value = attribute(field.group(2), "value");
            if (field.group(1).equals("select")) {
                value = chosen(form.substring(field.end(), form.indexOf("</select>", field.end())));
            }
            fields.computeIfAbsent(name, one -> new ArrayList<>()).add(value == null ? "" : unescaped(value));
        }
        return fields;
    }

    private static String attribute(String attributes, String name) {
        Matcher found = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(attributes);
        return found.find() ? found.group(1) : null;
    }

    /** The option that is selected, else the first; one without a value is its text. */
    private static String chosen(String options) {
        Matcher selected = Pattern.compile("<option(?: value=\"([^\"]*)\")? selected>([^<]*)<")
                .matcher(options);
        if (selected.find()) {
            return selected.group(1) == null ? selected.group(2) : selected.group(1);
        }
        Matcher first = OPTION.matcher(options);
        return first.find() ? first.group(1) : "";
    }

    private static String unescaped(String text) {
        return text.replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&");
    }

    /** Answers a question that stands in a form. */
    static void answer(Map<String, List<String>> form, String question, String answer) {
        int at = form.getOrDefault("question", List.of()).indexOf(question);
        assertThat(at).as("the question " + question + " in " + form).isNotNegative();
        form.get("answer").set(at, answer);
    }

    /** Says what a column holds. */
    static void hold(Map<String, List<String>> form, int column, String field) {
        form.get("holds").set(column, column + ":" + field);
    }

    /** Waits until nothing runs any more; the page then. */
    String ended(String trial) {
        Patience.until(
                trial, () -> "true".equals(Api.as(role).get(trial + "/progress").header("HX-Refresh")));
        return page(trial);
    }
}
