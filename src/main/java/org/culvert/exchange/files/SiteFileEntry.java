package org.culvert.exchange.files;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.culvert.release.rules.Rule;
import org.jspecify.annotations.Nullable;

/** What is told beside a file of release sites. */
public record SiteFileEntry(
        @NotBlank @Size(max = 200) String nameAttribute,
        @NotBlank @Size(max = 200) String habitatAttribute,
        @Nullable @Size(max = 200) String catchmentAttribute,
        @Nullable @Size(max = 200) String protectedAreaAttribute,

        @NotNull @Pattern(regexp = Rule.ISO_3166, message = "must be an ISO 3166 code")
        String jurisdiction,

        @Nullable List<String> taxonGroups,
        @Nullable @Positive @DecimalMax("1000000") Double uncertaintyMetres,
        @Nullable @Size(max = 200) String crs,
        @Nullable @Size(max = 200) String layer) {}
