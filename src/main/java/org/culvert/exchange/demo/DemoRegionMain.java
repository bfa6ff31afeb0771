package org.culvert.exchange.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes the region into a folder: {@code DemoRegionMain FOLDER [SEED]}. */
public final class DemoRegionMain {
    private DemoRegionMain() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 1) {
            throw new IllegalArgumentException("name the folder to write to");
        }
        DemoRegion region =
                arguments.length > 1 ? DemoRegion.withSeed(Long.parseLong(arguments[1])) : DemoRegion.committed();
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        for (Map.Entry<String, String> file : RegionFiles.of(region).entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
    }
}
