package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Left: os.name and os.arch as the JDKs of these platforms give them. Right: the names inside the published archives. */
class PostgresBinariesTest {
    @ParameterizedTest
    @CsvSource({
        "Linux, amd64, postgres-linux-x86_64.txz",
        "Linux, aarch64, postgres-linux-arm_64.txz",
        "Mac OS X, x86_64, postgres-darwin-x86_64.txz",
        "Mac OS X, aarch64, postgres-darwin-arm_64.txz",
        "Windows 11, amd64, postgres-windows_11-x86_64.txz",
    })
    void everyPlatformHasItsArchive(String os, String arch, String archive) {
        assertThat(PostgresBinaries.resourceName(os, arch)).isEqualTo(archive);
    }

    @Test
    void anOperatorOfAnotherPlatformIsToldWhatToDo() {
        assertThatThrownBy(() -> PostgresBinaries.unpackInto(Path.of("unused"), "Plan 9", "mips"))
                .isInstanceOf(CannotStartException.class)
                .hasMessageContainingAll("Plan 9", "mips", "CULVERT_DATABASE_URL");
    }
}
