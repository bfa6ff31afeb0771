package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import org.culvert.platform.FormBodies;
import org.culvert.release.file.FeatureFileService;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.Rule;
import org.culvert.road.AttributeNames;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkService.Format;
import org.culvert.road.file.SentFile;
import org.culvert.web.acts.Act;
import org.culvert.web.forms.EntryBody;
import org.jspecify.annotations.Nullable;

/** Kinds of settings that come in files, and what is asked beside each. */
@ApplicationScoped
class SheetFiles {
    /** Which kinds do. */
    static final Set<String> KINDS = Set.of("road-networks", "land-areas", "release-sites");

    /** What is told beside a file of roads. */
    record RoadFileEntry(
            @NotBlank @Size(max = 200) String name,
            @Nullable @Size(max = 200) String crs,
            @Nullable @Size(max = 200) String layer,
            @Nullable AttributeNames attributes) {}

    /** What is told beside a file of land. */
    record LandFileEntry(
            @NotNull Land.Kind kind,
            @NotBlank @Size(max = 200) String nameAttribute,
            @NotBlank @Size(max = 2000) String source,
            @NotNull LocalDate from,
            @Nullable LocalDate until,
            @Nullable @Size(max = 200) String crs,
            @Nullable @Size(max = 200) String layer) {}

    /** What is told beside a file of release sites. */
    record SiteFileEntry(
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

    /** A file and its name. */
    record Sent(String name, InputStream octets) {
        private boolean endsWith(String end) {
            return name.toLowerCase(Locale.ROOT).endsWith(end);
        }

        SentFile features(@Nullable String crs, @Nullable String layer) {
            return new SentFile(endsWith(".gpkg"), crs, layer, octets);
        }

        Format format() {
            return endsWith(".gpkg") ? Format.GEO_PACKAGE : endsWith(".pbf") ? Format.OPEN_STREET_MAP : Format.GEO_JSON;
        }
    }

    /** A file of a kind, and what is asked beside it. */
    record FileAct<E>(Act<E> act, BiConsumer<E, Sent> taking) {
        void take(EntryBody told, FormBodies bodies, Sent sent) {
            taking.accept(told.read(bodies, act.body()), sent);
        }
    }

    private static final AttributeNames NO_NAMES = new AttributeNames(
            null, null, null, null, null, null, null, null, null, null, null, null, null, null, null);

    private final Map<String, FileAct<?>> byKind;

    SheetFiles(RoadNetworkService networks, FeatureFileService features) {
        this.byKind = Map.of(
                "road-networks",
                file(
                        "POST /api/road-networks",
                        RoadFileEntry.class,
                        (entry, sent) -> networks.importNetwork(
                                sent.format(),
                                entry.name(),
                                entry.crs(),
                                entry.layer(),
                                entry.attributes() == null ? NO_NAMES : entry.attributes(),
                                sent.octets())),
                "land-areas",
                file(
                        "POST /api/land-areas/files",
                        LandFileEntry.class,
                        (entry, sent) -> features.enterLand(
                                new FeatureFileService.LandFile(
                                        entry.kind(),
                                        entry.nameAttribute(),
                                        entry.source(),
                                        entry.from(),
                                        entry.until()),
                                sent.features(entry.crs(), entry.layer()))),
                "release-sites",
                file(
                        "POST /api/release-sites/files",
                        SiteFileEntry.class,
                        (entry, sent) -> features.enterSites(
                                new FeatureFileService.SiteFile(
                                        entry.nameAttribute(),
                                        entry.habitatAttribute(),
                                        entry.catchmentAttribute(),
                                        entry.protectedAreaAttribute(),
                                        entry.jurisdiction(),
                                        entry.taxonGroups() == null ? List.of() : entry.taxonGroups(),
                                        entry.uncertaintyMetres()),
                                sent.features(entry.crs(), entry.layer()))));
    }

    private static <E> FileAct<E> file(String operation, Class<E> body, BiConsumer<E, Sent> taking) {
        return new FileAct<>(new Act<>("file", operation, null, false, body, Set.of()), taking);
    }

    @Nullable
    FileAct<?> find(String kind) {
        return byKind.get(kind);
    }
}
