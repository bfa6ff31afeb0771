package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import org.culvert.platform.PackagedServer;
import org.culvert.platform.database.UnpackedPostgres;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a proxy with TLS says of the connection, believed of it alone. */
class BehindProxyIT {
    @TempDir
    Path folder;

    @Test
    void theProxyIsBelievedAndNobodyElse() throws IOException, InterruptedException {
        Map<String, String> home = Map.of(
                "CULVERT_HOME",
                UnpackedPostgres.into(folder.resolve("home")).toString(),
                "CULVERT_BEHIND_PROXY",
                "true");
        try (PackagedServer server = PackagedServer.start(folder, home)) {
            HttpResponse<String> secret = get(server.at("/sign-in"), "https");
            assertThat(secret.headers().allValues("Strict-Transport-Security")).containsExactly("max-age=31536000");
            assertThat(secret.headers().firstValue("Set-Cookie").orElseThrow()).contains("Secure");
            HttpResponse<String> open = get(server.at("/sign-in"), "http");
            assertThat(open.headers().firstValue("Strict-Transport-Security")).isEmpty();
            assertThat(open.headers().firstValue("Set-Cookie").orElseThrow()).doesNotContain("Secure");
            String root = server.at("/ogc").toString();
            // The proxy says nothing of its port: that which is usual
            String usual = root.replaceFirst(":\\d+", "");
            assertThat(get(server.at("/ogc"), "https").body())
                    .contains("\"" + usual.replace("http:", "https:") + "/collections\"")
                    .doesNotContain("http:");
            assertThat(get(server.at("/ogc"), "http").body()).contains("\"" + usual + "/collections\"");
        }
        Map<String, String> another = new java.util.TreeMap<>(home);
        another.put("CULVERT_TRUSTED_PROXIES", "192.0.2.7");
        another.put("CULVERT_PUBLIC_ADDRESS", "https://rescue.example.org/culvert");
        try (PackagedServer server = PackagedServer.start(folder, another)) {
            HttpResponse<String> forged = get(server.at("/sign-in"), "https");
            assertThat(forged.statusCode()).isEqualTo(200);
            assertThat(forged.headers().firstValue("Strict-Transport-Security")).isEmpty();
            assertThat(forged.headers().firstValue("Set-Cookie").orElseThrow()).doesNotContain("Secure");
            assertThat(get(server.at("/ogc/collections"), "http").body())
                    .contains("\"https://rescue.example.org/culvert/ogc/collections/collisions/items\"")
                    .doesNotContain("localhost", "127.0.0.1");
        }
    }

    private static HttpResponse<String> get(URI address, String scheme) throws IOException, InterruptedException {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(address)
                                .header("X-Forwarded-Proto", scheme)
                                .header("X-Forwarded-For", "203.0.113.9")
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
    }
}
