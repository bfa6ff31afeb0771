package org.culvert.web.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class BundleSizeTest {
    /** What Quarkus 3.33.2 writes for a bundle of more than 300 messages is refused by the virtual machine (found by trying). */
    @Test
    void noBundleHasMoreMessagesThanWork() throws IOException {
        List<Path> bundles;
        try (Stream<Path> files = Files.list(Path.of("src/main/java/org/culvert/web/words"))) {
            bundles =
                    files.filter(file -> file.toString().endsWith("Words.java")).toList();
        }
        assertThat(bundles).isNotEmpty();
        for (Path bundle : bundles) {
            assertThat(Files.readString(bundle).split("@Message\\(", -1))
                    .as("%s", bundle.getFileName())
                    .hasSizeLessThanOrEqualTo(301);
        }
    }
}
