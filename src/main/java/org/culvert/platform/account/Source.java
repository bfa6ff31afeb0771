package org.culvert.platform.account;

import io.vertx.ext.web.RoutingContext;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;

/** Where requests come from, as tries are counted: whoever has an address of IPv6 has the whole /64 (RFC 7421). */
final class Source {
    private static final int OCTETS_OF_A_NETWORK = 8;

    private Source() {}

    static String of(RoutingContext context) {
        return context.request().remoteAddress() == null
                ? "unknown"
                : of(String.valueOf(context.request().remoteAddress().hostAddress()));
    }

    static String of(String address) {
        if (!address.contains(":")) {
            return address;
        }
        try {
            // What has a colon is never looked up as a name; an IPv4 address within IPv6 becomes one of IPv4
            InetAddress read = InetAddress.getByName(address);
            if (!(read instanceof Inet6Address)) {
                return read.getHostAddress();
            }
            byte[] octets = read.getAddress();
            for (int i = OCTETS_OF_A_NETWORK; i < octets.length; i++) {
                octets[i] = 0;
            }
            return InetAddress.getByAddress(octets).getHostAddress() + "/64";
        } catch (UnknownHostException e) {
            return address;
        }
    }
}
