package org.culvert.exchange.files;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.culvert.release.rules.Land;
import org.jspecify.annotations.Nullable;

/** What is told beside a file of land. */
public record LandFileEntry(
        @NotNull Land.Kind kind,
        @NotBlank @Size(max = 200) String nameAttribute,
        @NotBlank @Size(max = 2000) String source,
        @NotNull LocalDate from,
        @Nullable LocalDate until,
        @Nullable @Size(max = 200) String crs,
        @Nullable @Size(max = 200) String layer) {}
