package org.culvert.exchange.event;

import jakarta.enterprise.context.ApplicationScoped;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Optional;
import org.culvert.platform.InvalidException;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Where messages may go: to hosts that anybody can reach, over TLS. What lies in the server's own network is refused, so that
 * nobody makes the server ask for what only it can reach; asked again at each sending, since names move.
 */
@ApplicationScoped
class Addresses {
    private static final String WANTED = "https, a host that anybody can reach, and no name or password in it";

    private final boolean privateToo;

    Addresses(@ConfigProperty(name = "culvert.events.private-addresses", defaultValue = "false") boolean privateToo) {
        this.privateToo = privateToo;
    }

    /** @throws InvalidException when nothing may be sent there */
    URI require(String address) {
        URI uri;
        try {
            uri = new URI(address);
        } catch (URISyntaxException e) {
            throw InvalidException.of("address", "This is no address.", WANTED);
        }
        boolean secret = "https".equals(scheme(uri)) || privateToo && "http".equals(scheme(uri));
        if (!secret || uri.getHost() == null || uri.getRawUserInfo() != null || uri.getRawFragment() != null) {
            throw InvalidException.of("address", "Messages do not go to such an address.", WANTED);
        }
        whyNot(uri).ifPresent(why -> {
            throw InvalidException.of("address", why, WANTED);
        });
        return uri;
    }

    private static String scheme(URI uri) {
        return uri.getScheme() == null ? "" : uri.getScheme().toLowerCase(Locale.ROOT);
    }

    /** Why nothing is sent to a host now, or empty. */
    Optional<String> whyNot(URI uri) {
        try {
            for (InetAddress one : InetAddress.getAllByName(uri.getHost())) {
                if (!privateToo && isOwn(one)) {
                    return Optional.of("That host lies in a network of its own, or is this machine.");
                }
            }
            return Optional.empty();
        } catch (UnknownHostException e) {
            return Optional.of("Nobody knows that host.");
        }
    }

    /** Addresses that the Internet does not reach: RFC 6890 and RFC 4193 (the most usual of them, from memory). */
    static boolean isOwn(InetAddress address) {
        byte[] b = address.getAddress();
        if (address instanceof Inet6Address) {
            boolean uniqueLocal = (b[0] & 0xfe) == 0xfc;
            boolean translated =
                    (b[0] & 0xff) == 0x00 && (b[1] & 0xff) == 0x64 && (b[2] & 0xff) == 0xff && (b[3] & 0xff) == 0x9b;
            boolean sixToFour = (b[0] & 0xff) == 0x20 && (b[1] & 0xff) == 0x02;
            if (uniqueLocal || translated || sixToFour) {
                return true;
            }
        } else {
            int first = b[0] & 0xff;
            int second = b[1] & 0xff;
            boolean shared = first == 100 && second >= 64 && second < 128;
            boolean protocol = first == 192 && second == 0 && b[2] == 0;
            boolean benchmark = first == 198 && (second == 18 || second == 19);
            if (first == 0 || shared || protocol || benchmark || first >= 240) {
                return true;
            }
        }
        return address.isLoopbackAddress()
                || address.isAnyLocalAddress()
                || address.isLinkLocalAddress()
                || address.isSiteLocalAddress()
                || address.isMulticastAddress();
    }
}
