package org.culvert.release.file;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.culvert.geo.GeoPackageGeometry;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.platform.file.TemporaryCopy;
import org.culvert.release.SiteService;
import org.culvert.release.land.LandService;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.Site;
import org.culvert.road.file.FileOfFeatures;
import org.culvert.road.file.FileOfFeatures.Feature;
import org.culvert.road.file.SentFile;
import org.jspecify.annotations.Nullable;

/** Enters land and release sites from files: each feature through the same service as one that is entered by hand. */
@ApplicationScoped
public class FeatureFileService {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_WORDS = 2000;
    private static final int FEATURES_AT_ONCE = 100;

    /**
     * What a file of land is of.
     *
     * @param nameAttribute attribute that holds the name of each
     */
    public record LandFile(
            Land.Kind kind,
            String nameAttribute,
            String source,
            LocalDate from,
            @Nullable LocalDate until) {}

    /**
     * What a file of release sites says, and what it does not.
     *
     * @param jurisdiction where all of them are
     * @param taxonGroups keys of the groups that all of them are fit for
     * @param uncertaintyMetres radius around each point; a polygon has its own
     */
    public record SiteFile(
            String nameAttribute,
            String habitatAttribute,
            @Nullable String catchmentAttribute,
            @Nullable String protectedAreaAttribute,
            String jurisdiction,
            List<String> taxonGroups,
            @Nullable Double uncertaintyMetres) {}

    private final ObjectMapper mapper;
    private final LandService land;
    private final SiteService sites;
    private final EntityManager entities;
    private final Actor actor;
    private final Clock clock;

    FeatureFileService(
            ObjectMapper mapper,
            LandService land,
            SiteService sites,
            EntityManager entities,
            Actor actor,
            Clock clock) {
        this.mapper = mapper;
        this.land = land;
        this.sites = sites;
        this.entities = entities;
        this.actor = actor;
        this.clock = clock;
    }

    /** @throws InvalidException naming the feature that is wrong; then nothing is entered */
    @Transactional
    public FeatureFileView enterLand(LandFile file, SentFile sent) {
        return enterLand(file, sent, ReadingWatch.NOBODY);
    }

    /** The same, where somebody waits for it. */
    @Transactional
    public FeatureFileView enterLand(LandFile file, SentFile sent, ReadingWatch watch) {
        List<UUID> ids = new ArrayList<>();
        try (TemporaryCopy copy = TemporaryCopy.of(sent.octets())) {
            UUID importId = note("landAreas", copy.sha256());
            FileOfFeatures.Told told = new FileOfFeatures(
                            mapper, sent, copy, List.of(Kind.POLYGON), List.of(file.nameAttribute()), feature -> {
                                var entry = new LandService.LandEntry(
                                        file.kind(),
                                        required(feature, file.nameAttribute()),
                                        file.source(),
                                        file.from(),
                                        file.until(),
                                        geometry(feature.shape()));
                                ids.add(within(
                                        feature,
                                        () -> land.enter(entry, importId).id()));
                                entered(ids, watch);
                            })
                    .read();
            return view(importId, copy, told, ids);
        }
    }

    /** @throws InvalidException naming the feature that is wrong; then nothing is entered */
    @Transactional
    public FeatureFileView enterSites(SiteFile file, SentFile sent) {
        return enterSites(file, sent, ReadingWatch.NOBODY);
    }

    /** The same, where somebody waits for it. */
    @Transactional
    public FeatureFileView enterSites(SiteFile file, SentFile sent, ReadingWatch watch) {
        List<UUID> ids = new ArrayList<>();
        List<String> attributes = Stream.of(
                        file.nameAttribute(),
                        file.habitatAttribute(),
                        file.catchmentAttribute(),
                        file.protectedAreaAttribute())
                .filter(Objects::nonNull)
                .toList();
        try (TemporaryCopy copy = TemporaryCopy.of(sent.octets())) {
            UUID importId = note("releaseSites", copy.sha256());
            FileOfFeatures.Told told = new FileOfFeatures(
                            mapper, sent, copy, List.of(Kind.POINT, Kind.POLYGON), attributes, feature -> {
                                Circle circle = circle(feature, file.uncertaintyMetres());
                                var entry = new SiteService.SiteEntry(
                                        required(feature, file.nameAttribute()),
                                        file.jurisdiction(),
                                        circle.centre.latitude(),
                                        circle.centre.longitude(),
                                        circle.metres,
                                        required(feature, file.habitatAttribute()),
                                        file.taxonGroups(),
                                        feature.text(file.catchmentAttribute(), LONGEST_NAME),
                                        feature.text(file.protectedAreaAttribute(), LONGEST_NAME),
                                        Site.Consent.unknown,
                                        null);
                                ids.add(within(
                                        feature,
                                        () -> sites.createSite(entry, importId).id()));
                                entered(ids, watch);
                            })
                    .read();
            return view(importId, copy, told, ids);
        }
    }

    /** What was entered is looked through for changes with each feature that follows, until it is let go. */
    private void entered(List<UUID> ids, ReadingWatch watch) {
        watch.hear(ReadingWatch.Step.features, ids.size(), 0);
        if (ids.size() % FEATURES_AT_ONCE == 0) {
            entities.flush();
            entities.clear();
        }
    }

    private static FeatureFileView view(UUID importId, TemporaryCopy copy, FileOfFeatures.Told told, List<UUID> ids) {
        return new FeatureFileView(importId, copy.sha256(), told.features(), ids.size(), told.leftOut(), ids);
    }

    private static String required(Feature feature, String attribute) {
        String text = feature.text(attribute, LONGEST_NAME);
        if (text == null) {
            throw InvalidException.of(
                    feature.at() + ".properties." + attribute,
                    "This is missing.",
                    "a text of at most " + LONGEST_NAME + " characters");
        }
        return text;
    }

    /** What is wrong with one feature is said with its place in the file. */
    private static UUID within(Feature feature, Supplier<UUID> entered) {
        try {
            return entered.get();
        } catch (InvalidException wrong) {
            throw new InvalidException(wrong.errors().stream()
                    .map(error -> new InvalidException.FieldError(
                            feature.at() + "." + error.field(), error.detail(), error.wanted(), error.otherReading()))
                    .toList());
        }
    }

    private static LandService.GeometryEntry geometry(GeoPackageGeometry shape) {
        List<Object> polygons = new ArrayList<>();
        for (List<double[]> rings : shape.parts()) {
            List<Object> polygon = new ArrayList<>();
            for (double[] ring : rings) {
                List<Object> positions = new ArrayList<>();
                for (int i = 0; i < ring.length; i += 2) {
                    positions.add(List.of(ring[i], ring[i + 1]));
                }
                polygon.add(positions);
            }
            polygons.add(polygon);
        }
        return new LandService.GeometryEntry(LandService.GeometryType.MultiPolygon, polygons);
    }

    private record Circle(Position centre, double metres) {}

    /** The circle around a site: of a polygon the one around the middle of its box that holds all of it. */
    private static Circle circle(Feature feature, @Nullable Double uncertaintyMetres) {
        double[] first = feature.shape().parts().get(0).get(0);
        if (feature.shape().kind() == Kind.POINT) {
            if (feature.shape().parts().size() > 1) {
                throw InvalidException.of(
                        feature.at() + ".geometry", "These are several points.", "one point, or polygons");
            }
            if (uncertaintyMetres == null) {
                throw InvalidException.of(
                        "uncertaintyMetres",
                        "A point alone does not say how large a site is.",
                        "a radius that holds every place on it where an animal would be let go");
            }
            return new Circle(new Position(first[1], first[0]), uncertaintyMetres);
        }
        double[] box = {first[0], first[1], first[0], first[1]};
        for (double[] ring : outer(feature)) {
            for (int i = 0; i < ring.length; i += 2) {
                box[0] = Math.min(box[0], ring[i]);
                box[1] = Math.min(box[1], ring[i + 1]);
                box[2] = Math.max(box[2], ring[i]);
                box[3] = Math.max(box[3], ring[i + 1]);
            }
        }
        var centre = new Position((box[1] + box[3]) / 2, (box[0] + box[2]) / 2);
        double metres = 1;
        for (double[] ring : outer(feature)) {
            for (int i = 0; i < ring.length; i += 2) {
                metres = Math.max(metres, Geodesy.metresBetween(centre, new Position(ring[i + 1], ring[i])));
            }
        }
        return new Circle(centre, Math.ceil(metres));
    }

    private static List<double[]> outer(Feature feature) {
        return feature.shape().parts().stream().map(rings -> rings.get(0)).toList();
    }

    private UUID note(String kind, String sha256) {
        UUID id = UUID.randomUUID();
        entities.createNativeQuery("INSERT INTO imports (id, kind, file_name, sha256, recorded_at, recorded_by)"
                        + " VALUES (?1, ?2, ?2, ?3, ?4, ?5)")
                .setParameter(1, id)
                .setParameter(2, kind)
                .setParameter(3, sha256)
                .setParameter(4, OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                .setParameter(5, actor.accountId())
                .executeUpdate();
        return id;
    }

    /** @throws InvalidException if words that hold for the whole file are longer than can be kept */
    static String words(String field, @Nullable String text) {
        if (text == null || text.isBlank() || text.length() > LONGEST_WORDS) {
            throw InvalidException.of(
                    field,
                    text == null || text.isBlank() ? "This is missing." : "This is longer than can be kept.",
                    "a text of at most " + LONGEST_WORDS + " characters");
        }
        return text.strip();
    }
}
