package org.culvert.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Signs in through the form, as a browser without scripts does, and makes a token on the account page. */
public final class FormSignIn {
    private static final Pattern CSRF = Pattern.compile("name=\"csrf\" value=\"([^\"]+)\"");
    private static final Pattern TOKEN = Pattern.compile("id=\"token\"[^>]*>([^<]+)<");

    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private final URI server;

    public FormSignIn(URI server) {
        this.server = server;
    }

    public static String makeToken(URI server, String username, String password, String scopes) {
        var browser = new FormSignIn(server);
        HttpResponse<String> in = browser.signIn(username, password);
        if (in.statusCode() != 303) {
            throw new AssertionError("signing in as " + username + " gave " + in.statusCode() + ": " + in.body());
        }
        String page = browser.submit("/account", "/account/tokens", "name", "test", "scopes", scopes)
                .body();
        Matcher shown = TOKEN.matcher(page);
        if (!shown.find()) {
            throw new AssertionError("no token was shown: " + page);
        }
        return shown.group(1);
    }

    public HttpResponse<String> signIn(String username, String password) {
        return submit("/sign-in", "/sign-in", "username", username, "password", password);
    }

    public HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(server.resolve(path)).header("Accept", "text/html"));
    }

    /** Opens a page and sends one of its forms, with names and values in turn. */
    public HttpResponse<String> submit(String page, String action, String... fields) {
        Matcher secret = CSRF.matcher(get(page).body());
        return post(action, secret.find() ? secret.group(1) : "", fields);
    }

    /** Sends a form with any secret. */
    public HttpResponse<String> post(String action, String csrf, String... fields) {
        StringBuilder body = new StringBuilder("csrf=").append(encoded(csrf));
        for (int i = 0; i < fields.length; i += 2) {
            body.append('&').append(fields[i]).append('=').append(encoded(fields[i + 1]));
        }
        return send(HttpRequest.newBuilder(server.resolve(action))
                .header("Accept", "text/html")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
    }

    /** Sends a form with one field and a file (RFC 7578). */
    public HttpResponse<String> upload(
            String action, String csrf, String field, String value, String file, String fileName, String text) {
        String part = "--a-boundary-of-forms\r\nContent-Disposition: form-data; name=\"";
        String body =
                part + "csrf\"\r\n\r\n" + csrf + "\r\n" + part + field + "\"\r\n\r\n" + value + "\r\n" + part + file
                        + "\"; filename=\"" + fileName + "\"\r\nContent-Type: text/csv\r\n\r\n" + text
                        + "\r\n--a-boundary-of-forms--\r\n";
        return send(HttpRequest.newBuilder(server.resolve(action))
                .header("Accept", "text/html")
                .header("Content-Type", "multipart/form-data; boundary=a-boundary-of-forms")
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    /** Sends a form in parts (RFC 7578); a field {@code picture} or {@code file} is a file. */
    public HttpResponse<String> postParts(String action, String csrf, String... fields) {
        String between = "--culvert-" + UUID.randomUUID();
        StringBuilder body = new StringBuilder();
        body.append(part(between, "csrf", csrf));
        for (int i = 0; i < fields.length; i += 2) {
            body.append(part(between, fields[i], fields[i + 1]));
        }
        body.append(between).append("--\r\n");
        return send(HttpRequest.newBuilder(server.resolve(action))
                .header("Accept", "text/html")
                .header("Content-Type", "multipart/form-data; boundary=" + between.substring(2))
                .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
    }

    private static String part(String between, String name, String value) {
        String file = switch (name) {
            case "picture" -> "; filename=\"picture.jpeg\"\r\nContent-Type: image/jpeg";
            case "file" -> "; filename=\"file.geojson\"\r\nContent-Type: application/geo+json";
            default -> "";
        };
        return between + "\r\nContent-Disposition: form-data; name=\"" + name + "\"" + file + "\r\n\r\n" + value
                + "\r\n";
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
