package org.culvert.platform.account;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Addresses as RFC 4291, section 2.2, writes them; documentation addresses of RFC 3849 and RFC 5737. */
class SourceTest {
    @ParameterizedTest
    @CsvSource({
        "192.0.2.7, 192.0.2.7",
        "::ffff:192.0.2.7, 192.0.2.7",
        "2001:db8:1:2:3:4:5:6, 2001:db8:1:2:0:0:0:0/64",
        "2001:db8:1:2::9, 2001:db8:1:2:0:0:0:0/64",
        "2001:db8:1:3::9, 2001:db8:1:3:0:0:0:0/64",
        "::1, 0:0:0:0:0:0:0:0/64",
        "unknown, unknown",
    })
    void anAddressOfIPv6CountsWithItsNetwork(String address, String source) {
        assertThat(Source.of(address)).isEqualTo(source);
    }
}
