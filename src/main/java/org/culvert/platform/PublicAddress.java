package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * Where others reach this server: as configured, or else as the request did, which behind a proxy its headers say. A configured
 * address may have a path before those of the server.
 */
@ApplicationScoped
public class PublicAddress {
    private final @Nullable String configured;

    PublicAddress(@ConfigProperty(name = "culvert.public-address") Optional<String> configured) {
        this.configured = configured
                .map(String::strip)
                .filter(address -> !address.isEmpty())
                .map(PublicAddress::checked)
                .orElse(null);
    }

    private static String checked(String address) {
        URI uri = URI.create(address);
        if (uri.getHost() == null || !("https".equals(uri.getScheme()) || "http".equals(uri.getScheme()))) {
            throw new IllegalArgumentException("CULVERT_PUBLIC_ADDRESS is " + address
                    + ", which is no address such as https://rescue.example.org");
        }
        return withoutSlash(address);
    }

    /**
     * The address without a slash at its end.
     *
     * @param asked how the request reached the server
     */
    public String of(URI asked) {
        return configured != null ? configured : withoutSlash(asked.toString());
    }

    private static String withoutSlash(String address) {
        return address.replaceFirst("/+$", "");
    }
}
