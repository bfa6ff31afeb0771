package org.culvert.support;

import java.net.http.HttpResponse;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hamcrest.Description;
import org.hamcrest.StringDescription;
import org.jspecify.annotations.Nullable;

/** What the server answered, to be read, and to be held against what a test wants. */
public final class Answer {
    private static final int LONGEST_SHOWN = 2000;
    private static final Pattern CHARSET = Pattern.compile("(?i)charset=\"?([^\";\\s]+)");

    private final String asked;
    private final byte @Nullable [] sent;
    private final HttpResponse<byte[]> response;
    private @Nullable Json json;

    Answer(String asked, byte @Nullable [] sent, HttpResponse<byte[]> response) {
        this.asked = asked;
        this.sent = sent;
        this.response = response;
    }

    /** The answer itself: here begins what is wanted of it. */
    public Answer then() {
        return this;
    }

    /** The answer itself: here ends what is wanted of it. */
    public Answer extract() {
        return this;
    }

    public int statusCode() {
        return response.statusCode();
    }

    public Answer statusCode(int wanted) {
        if (statusCode() != wanted) {
            throw failure("the status", Integer.toString(wanted), "was " + statusCode());
        }
        return this;
    }

    public Answer statusCode(org.hamcrest.Matcher<? super Integer> wanted) {
        return check("the status", statusCode(), wanted);
    }

    /** The first header of a name, or null. */
    public @Nullable String header(String name) {
        return response.headers().firstValue(name).orElse(null);
    }

    /** All headers of a name, in their order. */
    public List<String> headers(String name) {
        return response.headers().allValues(name);
    }

    public Answer header(String name, String wanted) {
        return header(name, org.hamcrest.Matchers.equalTo(wanted));
    }

    public Answer header(String name, org.hamcrest.Matcher<? super String> wanted) {
        return check("the header " + name, header(name), wanted);
    }

    public String contentType() {
        String type = header("Content-Type");
        return type == null ? "" : type;
    }

    /** Wants a media type; parameters of it that are not named may be any. */
    public Answer contentType(String wanted) {
        String type = contentType().toLowerCase(Locale.ROOT).replace(" ", "");
        String without = wanted.contains(";") ? type : type.replaceFirst(";.*", "");
        if (!without.equals(wanted.toLowerCase(Locale.ROOT).replace(" ", ""))) {
            throw failure("the content type", wanted, "was " + contentType());
        }
        return this;
    }

    public Answer contentType(org.hamcrest.Matcher<? super String> wanted) {
        return check("the content type", contentType(), wanted);
    }

    /** What a cookie is set to, or null. */
    public @Nullable String cookie(String name) {
        return cookies().get(name);
    }

    public Answer cookie(String name, org.hamcrest.Matcher<? super String> wanted) {
        return check("the cookie " + name, cookie(name), wanted);
    }

    public Map<String, String> cookies() {
        Map<String, String> cookies = new LinkedHashMap<>();
        for (String set : headers("Set-Cookie")) {
            String pair = set.split(";", 2)[0];
            int equals = pair.indexOf('=');
            cookies.put(
                    pair.substring(0, equals).strip(),
                    pair.substring(equals + 1).strip());
        }
        return cookies;
    }

    public byte[] asByteArray() {
        return response.body().clone();
    }

    public String asString() {
        Matcher charset = CHARSET.matcher(contentType());
        return new String(response.body(), charset.find() ? Charset.forName(charset.group(1)) : StandardCharsets.UTF_8);
    }

    /** The body as JSON. */
    public Json jsonPath() {
        if (json == null) {
            try {
                json = Json.from(asString());
            } catch (IllegalArgumentException e) {
                throw failure("the body", "JSON", "was not: " + e.getMessage());
            }
        }
        return json;
    }

    /** What is at a path of the JSON body, or null. */
    public <T> T path(String path) {
        return jsonPath().get(path);
    }

    public Answer body(org.hamcrest.Matcher<? super String> wanted) {
        return check("the body", asString(), wanted);
    }

    /** Wants something of what is at a path of the JSON body: see {@link Json}. */
    public Answer body(String path, org.hamcrest.Matcher<?> wanted) {
        Object there;
        try {
            there = jsonPath().get(path);
        } catch (IllegalArgumentException e) {
            throw failure(path, StringDescription.toString(wanted), "cannot be read: " + e.getMessage());
        }
        return check(path, there, wanted);
    }

    private Answer check(String what, @Nullable Object is, org.hamcrest.Matcher<?> wanted) {
        if (!wanted.matches(is)) {
            Description mismatch = new StringDescription();
            wanted.describeMismatch(is, mismatch);
            throw failure(what, StringDescription.toString(wanted), mismatch.toString());
        }
        return this;
    }

    private AssertionError failure(String what, String wanted, String is) {
        return new AssertionError(
                "%s%n  wanted: %s: %s%n  but it %s%n%s".formatted(asked, what, cut(wanted), cut(is), indented()));
    }

    private String indented() {
        String said = contentType().startsWith("image/") || contentType().endsWith("octet-stream")
                ? response.body().length + " octets"
                : cut(asString());
        return "  sent: %s%n  answered: %d %s%n  %s"
                .formatted(
                        sent == null ? "nothing" : cut(new String(sent, StandardCharsets.UTF_8)),
                        statusCode(),
                        contentType(),
                        said.isEmpty() ? "(an empty body)" : said);
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_SHOWN
                ? text
                : text.substring(0, LONGEST_SHOWN) + "... (" + text.length() + " characters)";
    }

    /** What was asked and answered, as failures show it. */
    @Override
    public String toString() {
        return asked + System.lineSeparator() + indented();
    }
}
