package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RequestIdTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"a", "7f3c-desk.2", "!~", "0123456789012345678901234567890123456789012345678901234567890123"})
    void aSaneNameIsTheSendersOwn(String sent) {
        assertThat(RequestId.of(sent)).isEqualTo(sent);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "two words",
                "tab\there",
                "line\r\n2026-11-25 INFO forged",
                "caf\u00e9",
                "\u007f",
                "01234567890123456789012345678901234567890123456789012345678901234"
            })
    void whatWouldForgeOrFloodTheLogIsReplaced(String sent) {
        assertThat(UUID.fromString(RequestId.of(sent)).version()).isEqualTo(4);
    }

    @Test
    void twoRequestsWithoutANameAreToldApart() {
        assertThat(RequestId.of(null)).isNotEqualTo(RequestId.of(null));
    }
}
