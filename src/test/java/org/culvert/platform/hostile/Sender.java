package org.culvert.platform.hostile;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.support.Api;
import org.culvert.support.Request;

/** Sends whatever it is told, with a key of its own for each change, and the tag of the record that it is about. */
final class Sender {
    private static final Pattern RECORD = Pattern.compile("^/api/[a-z-]+(/[^/]+)?");
    private static final String NO_TAG = "\"none\"";

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private final Map<String, String> tags = new HashMap<>();

    HttpResponse<String> send(String verb, String role, String path, String body, String type)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = to(path, role)
                .method(
                        verb,
                        body.isEmpty()
                                ? HttpRequest.BodyPublishers.noBody()
                                : HttpRequest.BodyPublishers.ofString(body));
        if (!type.isEmpty()) {
            request.header("Content-Type", type);
        }
        if (!verb.equals("GET")) {
            request.header("Idempotency-Key", UUID.randomUUID().toString()).header("If-Match", tag(path, role));
        }
        HttpResponse<String> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofString());
        if (!verb.equals("GET") && answer.statusCode() < 400 || answer.statusCode() == 412) {
            tags.clear();
        }
        return answer;
    }

    HttpResponse<String> get(String path, String role) throws IOException, InterruptedException {
        return client.send(to(path, role).build(), HttpResponse.BodyHandlers.ofString());
    }

    private static HttpRequest.Builder to(String path, String role) {
        URI server = URI.create(Request.server());
        return HttpRequest.newBuilder(path.startsWith("/") ? URI.create(server + path) : URI.create(path))
                .header("Authorization", basic(role));
    }

    private static String basic(String role) {
        return "Basic "
                + Base64.getEncoder()
                        .encodeToString(("test-" + role + ":" + Api.token(role)).getBytes(StandardCharsets.UTF_8));
    }

    /** The tag of the nearest record above a path, as the asker reads it. */
    private String tag(String path, String role) throws IOException, InterruptedException {
        Matcher record = RECORD.matcher(path.replaceFirst("\\?.*", ""));
        if (!record.find()) {
            return NO_TAG;
        }
        String key = role + record.group();
        String tag = tags.get(key);
        if (tag == null) {
            tag = get(record.group(), role).headers().firstValue("ETag").orElse(NO_TAG);
            tags.put(key, tag);
        }
        return tag;
    }
}
