package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class MapTilesTest {
    @Test
    void pagesMayLoadPicturesOfThatHostAndNothingElseOfIt() {
        String host = MapTiles.hostOf("https://tiles.example.org:8443/base/{z}/{x}/{y}.png?key=1");
        assertThat(host).isEqualTo("https://tiles.example.org:8443");
        assertThat(MapTiles.policy("default-src 'self'; img-src 'self' data:; object-src 'none'", host))
                .isEqualTo(
                        "default-src 'self'; img-src 'self' https://tiles.example.org:8443 data:; object-src 'none'");
        assertThat(MapTiles.hostOf("http://localhost:9/{z}/{x}/{y}")).isEqualTo("http://localhost:9");
    }

    @Test
    void whatIsNoAddressOfTilesStopsTheStart() {
        for (String address : new String[] {
            "https://tiles.example.org/{z}/{x}.png",
            "http://tiles.example.org/{z}/{x}/{y}.png",
            "//tiles.example.org/{z}/{x}/{y}.png",
            "https://tiles.example.org; script-src *//{z}/{x}/{y}",
            "https://{s}.example.org/{z}/{x}/{y}.png"
        }) {
            assertThatThrownBy(() -> MapTiles.hostOf(address)).hasMessageContaining(address);
        }
    }
}
