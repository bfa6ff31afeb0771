package org.culvert.exchange.files;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.culvert.road.AttributeNames;
import org.jspecify.annotations.Nullable;

/** What is told beside a file of roads. */
public record RoadFileEntry(
        @NotBlank @Size(max = 200) String name,
        @Nullable @Size(max = 200) String crs,
        @Nullable @Size(max = 200) String layer,
        @Nullable AttributeNames attributes) {}
