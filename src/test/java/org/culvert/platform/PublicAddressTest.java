package org.culvert.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PublicAddressTest {
    private static final URI ASKED = URI.create("http://localhost:8080/");

    @Test
    void itIsTheConfiguredOneOrThatOfTheRequest() {
        assertThat(new PublicAddress(Optional.empty()).of(ASKED)).isEqualTo("http://localhost:8080");
        assertThat(new PublicAddress(Optional.of(" ")).of(ASKED)).isEqualTo("http://localhost:8080");
        assertThat(new PublicAddress(Optional.of("https://rescue.example.org/culvert/")).of(ASKED))
                .isEqualTo("https://rescue.example.org/culvert");
    }

    @Test
    void whatIsNoAddressStopsTheServer() {
        assertThatThrownBy(() -> new PublicAddress(Optional.of("rescue.example.org")))
                .hasMessageContaining("CULVERT_PUBLIC_ADDRESS");
        assertThatThrownBy(() -> new PublicAddress(Optional.of("ftp://rescue.example.org")))
                .hasMessageContaining("CULVERT_PUBLIC_ADDRESS");
    }
}
