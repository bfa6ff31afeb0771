package org.culvert.web;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Named;
import java.net.URI;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * A server of pictures that maps lie on, where whoever runs this server names one; else maps show our own roads alone, and no
 * browser is told of any other host. That server sees which area somebody looks at.
 */
@Named("mapTiles")
@ApplicationScoped
public class MapTiles {
    private static final String POLICY = "Content-Security-Policy";
    private static final String PICTURES = "img-src 'self'";
    private static final int BEFORE_PAGES = 100;
    private static final Pattern ADDRESS =
            Pattern.compile("(https?://[A-Za-z0-9.:-]+)/(?=.*\\{z})(?=.*\\{x})(?=.*\\{y})[^\\s\"'<>;,]*");

    private final @Nullable String address;
    private final @Nullable String host;
    private final String attribution;

    MapTiles(
            @ConfigProperty(name = "culvert.map.tiles") Optional<String> address,
            @ConfigProperty(name = "culvert.map.attribution") Optional<String> attribution) {
        String given =
                address.map(String::strip).filter(text -> !text.isEmpty()).orElse(null);
        this.address = given;
        this.host = given == null ? null : hostOf(given);
        this.attribution = attribution.map(String::strip).orElse("");
    }

    /** Address of a tile with {@code {z}}, {@code {x}} and {@code {y}}; null where none is configured. */
    public @Nullable String address() {
        return address;
    }

    /** Whose pictures they are, as text; empty where nobody said so. */
    public String attribution() {
        return attribution;
    }

    void allow(@Observes Filters filters) {
        String allowed = host;
        if (allowed != null) {
            filters.register(request -> widen(request, allowed), BEFORE_PAGES);
        }
    }

    private static void widen(RoutingContext request, String allowed) {
        request.addHeadersEndHandler(nothing -> {
            HttpServerResponse response = request.response();
            String policy = response.headers().get(POLICY);
            if (policy != null) {
                response.headers().set(POLICY, policy(policy, allowed));
            }
        });
        request.next();
    }

    static String policy(String policy, String allowed) {
        return policy.replace(PICTURES, PICTURES + " " + allowed);
    }

    static String hostOf(String address) {
        Matcher parts = ADDRESS.matcher(address);
        if (!parts.matches() || !isSafe(URI.create(parts.group(1)))) {
            throw new IllegalStateException("culvert.map.tiles is no address of tiles: " + address
                    + ". Right would be https://tiles.example.org/{z}/{x}/{y}.png");
        }
        return parts.group(1);
    }

    private static boolean isSafe(URI host) {
        return "https".equals(host.getScheme()) || Objects.equals(host.getHost(), "localhost");
    }
}
