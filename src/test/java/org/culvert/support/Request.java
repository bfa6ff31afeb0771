package org.culvert.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.microprofile.config.ConfigProvider;
import org.jspecify.annotations.Nullable;

/**
 * A request to the running server, made up step by step and then sent; it may be sent more than once.
 *
 * <p>It does what every client of Culvert does: gives each change an Idempotency-Key of its own, and reads a record before it
 * changes it, so as to send its tag. A test that is about keys or tags brings its own, or says that it wants none.
 */
public final class Request {
    public static final String JSON = "application/json";
    public static final String MERGE_PATCH = "application/merge-patch+json";
    public static final String FORM = "application/x-www-form-urlencoded";
    public static final String KEY = "Idempotency-Key";

    private static final String TAG = "If-Match";
    private static final Set<String> UNSAFE = Set.of("POST", "PUT", "PATCH", "DELETE");
    private static final Set<Integer> REDIRECTS = Set.of(301, 302, 303, 307, 308);
    private static final int MOST_REDIRECTS = 10;
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(2);

    /** Changes of a record, by how their paths begin: what is in brackets is the record that is read first. */
    private static final Pattern CHANGES = Pattern.compile("(/api/region)$|(/api/incidents/[^/]+)/place$"
            + "|(/api/cases/[^/]+)/(?:fate|body/disposal)$"
            + "|(/api/(?:attendances|hand-overs|joins|release-rules)/[^/]+)/[a-z-]+$"
            + "|(/api/accounts/[^/]+)/(?:disabling|enabling|roles)$"
            + "|(/api/visits/[^/]+)/discharge$|(/api/clutches/[^/]+)/[a-z-]+$");

    /** What no URI may have in it (RFC 3986, section 2), and a percent sign that begins no octet. */
    private static final Pattern UNWRITTEN = Pattern.compile("[^A-Za-z0-9._~:/?#@!$&'()*+,;=%-]+|%(?![0-9A-Fa-f]{2})");

    private static final HttpClient HTTP =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private final Map<String, List<String>> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    private final Map<String, String> cookies = new LinkedHashMap<>();
    private final List<String> query = new ArrayList<>();
    private final List<String> form = new ArrayList<>();
    private byte @Nullable [] body;
    private @Nullable String username;
    private boolean withKey = true;
    private boolean withTag = true;
    private boolean following = true;

    private Request() {}

    /** A request of nobody. */
    public static Request given() {
        return new Request();
    }

    /** Where the running server listens. */
    public static int port() {
        return ConfigProvider.getConfig().getValue("quarkus.http.test-port", Integer.class);
    }

    /** The root of the running server, without a slash at its end. */
    public static String server() {
        return "http://localhost:" + port();
    }

    public Request basic(String username, String password) {
        this.username = username;
        byte[] pair = (username + ":" + password).getBytes(StandardCharsets.UTF_8);
        return setHeader("Authorization", "Basic " + Base64.getEncoder().encodeToString(pair));
    }

    /** Adds a header; those that there can be one of only replace what was there. */
    public Request header(String name, Object value) {
        if (name.equalsIgnoreCase("Content-Type")
                || name.equalsIgnoreCase("Accept")
                || name.equalsIgnoreCase("Authorization")) {
            return setHeader(name, value.toString());
        }
        headers.computeIfAbsent(name, key -> new ArrayList<>()).add(value.toString());
        return this;
    }

    public Request contentType(String type) {
        return setHeader("Content-Type", type);
    }

    public Request accept(String types) {
        return setHeader("Accept", types);
    }

    private Request setHeader(String name, String value) {
        headers.put(name, new ArrayList<>(List.of(value)));
        return this;
    }

    /** @param value as it was given with an answer; null: none was, and none is sent */
    public Request cookie(String name, @Nullable String value) {
        if (value != null) {
            cookies.put(name, value);
        }
        return this;
    }

    public Request cookies(Map<String, String> all) {
        cookies.putAll(all);
        return this;
    }

    /** @param value a list for more than one */
    public Request queryParam(String name, Object value) {
        add(query, name, value);
        return this;
    }

    public Request queryParams(Map<String, ?> all) {
        all.forEach((name, value) -> add(query, name, value));
        return this;
    }

    /** @param value a list for more than one; null: no such field */
    public Request formParam(String name, @Nullable Object value) {
        if (value != null) {
            add(form, name, value);
        }
        return this;
    }

    public Request formParams(Map<String, ?> all) {
        all.forEach((name, value) -> add(form, name, value));
        return this;
    }

    private static void add(List<String> pairs, String name, Object value) {
        if (value instanceof Collection<?> values) {
            values.forEach(each -> add(pairs, name, each));
        } else {
            pairs.add(encode(name) + "=" + encode(value.toString()));
        }
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    public Request body(String text) {
        return body(text.getBytes(StandardCharsets.UTF_8));
    }

    public Request body(byte[] octets) {
        body = octets.clone();
        return this;
    }

    /** Leaves redirects to the test. */
    public Request withoutRedirects() {
        following = false;
        return this;
    }

    /** Sends no Idempotency-Key but those that the test sets. */
    public Request withoutKey() {
        withKey = false;
        return this;
    }

    /** Reads no tag of the record that is changed. */
    public Request withoutTag() {
        withTag = false;
        return this;
    }

    public Answer get(String path) {
        return request("GET", path);
    }

    public Answer head(String path) {
        return request("HEAD", path);
    }

    public Answer options(String path) {
        return request("OPTIONS", path);
    }

    public Answer post(String path) {
        return request("POST", path);
    }

    public Answer put(String path) {
        return request("PUT", path);
    }

    public Answer patch(String path) {
        return request("PATCH", path);
    }

    public Answer delete(String path) {
        return request("DELETE", path);
    }

    /**
     * Sends the request.
     *
     * @param method GET, HEAD, OPTIONS, POST, PUT, PATCH or DELETE
     * @param path of the running server, or a whole URI; what is percent-encoded in it stays as it is
     */
    public Answer request(String method, String path) {
        URI uri = uri(path);
        byte[] sent = body == null && !form.isEmpty() ? String.join("&", form).getBytes(StandardCharsets.UTF_8) : body;
        Answer answer = send(method, uri, sent);
        for (int i = 0; i < MOST_REDIRECTS && isToFollow(method, answer); i++) {
            uri = uri.resolve(answer.header("Location"));
            answer = send(method, uri, sent);
        }
        return answer;
    }

    private boolean isToFollow(String method, Answer answer) {
        return following
                && (method.equals("GET") || method.equals("HEAD"))
                && REDIRECTS.contains(answer.statusCode())
                && answer.header("Location") != null;
    }

    private URI uri(String path) {
        String whole = path.startsWith("http:") ? path : server() + (path.startsWith("/") ? path : "/" + path);
        if (!query.isEmpty()) {
            whole += (whole.indexOf('?') < 0 ? "?" : "&") + String.join("&", query);
        }
        return URI.create(UNWRITTEN
                .matcher(whole)
                .replaceAll(
                        found -> Matcher.quoteReplacement(encode(found.group()).replace("+", "%20"))));
    }

    private Answer send(String method, URI uri, byte @Nullable [] sent) {
        HttpRequest.Builder request = HttpRequest.newBuilder(uri)
                .timeout(LONGEST_WAIT)
                .method(
                        method,
                        sent == null
                                ? HttpRequest.BodyPublishers.noBody()
                                : HttpRequest.BodyPublishers.ofByteArray(sent));
        headers.forEach((name, values) -> values.forEach(value -> request.header(name, value)));
        if (!headers.containsKey("Accept")) {
            request.header("Accept", "*/*");
        }
        if (sent != null && !headers.containsKey("Content-Type")) {
            request.header("Content-Type", form.isEmpty() ? "text/plain; charset=UTF-8" : FORM);
        }
        if (!cookies.isEmpty()) {
            request.header(
                    "Cookie",
                    cookies.entrySet().stream()
                            .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                            .collect(Collectors.joining("; ")));
        }
        if (UNSAFE.contains(method)) {
            if (withKey && !headers.containsKey(KEY)) {
                request.header(KEY, UUID.randomUUID().toString());
            }
            String tag = withTag && !headers.containsKey(TAG) ? tag(uri) : null;
            if (tag != null) {
                request.header(TAG, tag);
            }
        }
        String asked = method + " " + uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery())
                + (username == null ? "" : " by " + username);
        return new Answer(asked, sent, exchange(asked, request.build()));
    }

    /** The tag of the record that is to be changed, as the same asker reads it, or null where there is nothing to read. */
    private @Nullable String tag(URI uri) {
        Matcher change = CHANGES.matcher(uri.getPath());
        if (!change.find()) {
            return null;
        }
        int group = 1;
        while (change.group(group) == null) {
            group++;
        }
        Request read = given();
        if (headers.containsKey("Authorization")) {
            read.headers.put("Authorization", headers.get("Authorization"));
        }
        return read.get(uri.resolve(change.group(group)).toString()).header("ETag");
    }

    private static HttpResponse<byte[]> exchange(String asked, HttpRequest request) {
        try {
            return HTTP.send(request, HttpResponse.BodyHandlers.ofByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(asked + " got no answer from " + request.uri() + ": " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(asked + " was interrupted", e);
        }
    }
}
