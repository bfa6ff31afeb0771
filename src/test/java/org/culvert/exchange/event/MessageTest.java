package org.culvert.exchange.event;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.InetAddress;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MessageTest {
    /** The example of the Standard Webhooks libraries, from memory: secret, message and signature. */
    @Test
    void theSignatureIsThatOfThePublishedExample() {
        byte[] secret = Base64.getDecoder().decode("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw");
        assertThat(Message.signature(secret, "msg_p5jXN8AQM9LWM0D4loKWxJek", 1_614_265_330L, "{\"test\": 2432232314}"))
                .isEqualTo("v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=");
    }

    /** CloudEvents 1.0.2: required attributes of section 3.1, JSON format of section 3.2; times by RFC 3339. */
    @Test
    void anEventHasWhatCloudEventsAsksFor() throws Exception {
        var id = UUID.fromString("01a2275f-f0ed-718c-9e7c-ce58157e9725");
        JsonNode event = new ObjectMapper()
                .readTree(Message.body(
                        id, "/api", "culvert.case.opened", "cases/" + id, Instant.parse("2026-11-29T10:00:00.5Z")));
        assertThat(event.get("specversion").asText()).isEqualTo("1.0");
        assertThat(event.get("id").asText()).isEqualTo(id.toString());
        assertThat(event.get("source").asText()).isNotEmpty();
        assertThat(event.get("type").asText()).matches("[a-z.-]+");
        assertThat(OffsetDateTime.parse(event.get("time").asText()).toInstant())
                .isEqualTo(Instant.parse("2026-11-29T10:00:00.5Z"));
        assertThat(event.get("datacontenttype").asText()).isEqualTo("application/json");
        assertThat(event.get("data").get("href").asText()).isEqualTo("/api/cases/" + id);
        // Section 3.1: names of attributes are small letters and digits
        event.fieldNames().forEachRemaining(name -> assertThat(name).matches("[a-z0-9]{1,20}"));
        assertThat(event.size()).as("nothing of the record itself").isEqualTo(8);
    }

    /** RFC 1918, 3927, 4193, 4291, 5737 and 6598, as RFC 6890 lists them. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "127.0.0.1",
                "127.9.9.9",
                "10.0.0.1",
                "172.16.0.1",
                "172.31.255.255",
                "192.168.1.1",
                "169.254.169.254",
                "100.64.0.1",
                "100.127.255.255",
                "0.0.0.0",
                "0.1.2.3",
                "192.0.0.8",
                "198.18.0.1",
                "224.0.0.1",
                "240.0.0.1",
                "255.255.255.255",
                "::1",
                "::",
                "fe80::1",
                "fc00::1",
                "fdff::1",
                "ff02::1",
                "::ffff:127.0.0.1",
                "64:ff9b::7f00:1",
                "2002:7f00:1::"
            })
    void whatTheInternetDoesNotReachIsRefused(String address) throws Exception {
        assertThat(Addresses.isOwn(InetAddress.getByName(address))).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1.1.1.1",
                "100.63.255.255",
                "100.128.0.0",
                "172.32.0.1",
                "198.20.0.1",
                "2606:4700::1111",
                "192.0.1.1"
            })
    void theRestIsNot(String address) throws Exception {
        assertThat(Addresses.isOwn(InetAddress.getByName(address))).isFalse();
    }
}
