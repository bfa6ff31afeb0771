package org.culvert.exchange.files;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.release.file.FeatureFileService;
import org.culvert.release.file.FeatureFileView;
import org.culvert.road.AttributeNames;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkService.Format;
import org.culvert.road.RoadNetworkService.ReadNetwork;
import org.culvert.road.RoadNetworkView;
import org.culvert.road.file.SentFile;
import org.culvert.road.traffic.TrafficFileService;
import org.culvert.road.traffic.TrafficFileTrial;
import org.culvert.road.traffic.TrafficFileView;

/** Reads files of each kind through the services that take them from programs. */
@ApplicationScoped
class FileReaders {
    /** Rows of a trial that are kept: more than a page can show make it heavy. */
    private static final int MOST_ROWS_KEPT = 200;

    private static final AttributeNames NO_NAMES = new AttributeNames(
            null, null, null, null, null, null, null, null, null, null, null, null, null, null, null);

    private final RoadNetworkService networks;
    private final FeatureFileService features;
    private final TrafficFileService counts;

    FileReaders(RoadNetworkService networks, FeatureFileService features, TrafficFileService counts) {
        this.networks = networks;
        this.features = features;
        this.counts = counts;
    }

    /**
     * Reads what can be read before the database is asked for a change.
     *
     * @param name by whose end the kinds of files are told apart
     * @return makes the change, within a transaction
     */
    Supplier<FileResult> read(Object entry, String name, InputStream octets, ReadingWatch watch) {
        if (entry instanceof RoadFileEntry roads) {
            ReadNetwork read = networks.read(
                    format(name),
                    roads.name(),
                    roads.crs(),
                    roads.layer(),
                    roads.attributes() == null ? NO_NAMES : roads.attributes(),
                    octets,
                    watch);
            return () -> result(networks.keep(read, watch));
        }
        if (entry instanceof LandFileEntry land) {
            return () -> result(features.enterLand(
                    new FeatureFileService.LandFile(
                            land.kind(), land.nameAttribute(), land.source(), land.from(), land.until()),
                    new SentFile(endsWith(name, ".gpkg"), land.crs(), land.layer(), octets),
                    watch));
        }
        if (entry instanceof SiteFileEntry sites) {
            return () -> result(features.enterSites(
                    new FeatureFileService.SiteFile(
                            sites.nameAttribute(),
                            sites.habitatAttribute(),
                            sites.catchmentAttribute(),
                            sites.protectedAreaAttribute(),
                            sites.jurisdiction(),
                            sites.taxonGroups() == null ? List.of() : sites.taxonGroups(),
                            sites.uncertaintyMetres()),
                    new SentFile(endsWith(name, ".gpkg"), sites.crs(), sites.layer(), octets),
                    watch));
        }
        if (entry instanceof TrafficFileEntry traffic) {
            var sent = new SentFile(endsWith(name, ".gpkg"), traffic.crs(), traffic.layer(), octets);
            return switch (traffic.wanted()) {
                case trial -> () -> result(counts.tryFile(traffic.said(), sent, watch));
                case entry -> () -> result(counts.enter(traffic.said(), sent, watch));
            };
        }
        throw new IllegalStateException(
                "there are no files of " + entry.getClass().getSimpleName());
    }

    private static boolean endsWith(String name, String end) {
        return name.toLowerCase(Locale.ROOT).endsWith(end);
    }

    private static Format format(String name) {
        return endsWith(name, ".gpkg")
                ? Format.GEO_PACKAGE
                : endsWith(name, ".pbf") ? Format.OPEN_STREET_MAP : Format.GEO_JSON;
    }

    private static FileResult result(RoadNetworkView made) {
        return new FileResult(
                made.id(),
                made.number(),
                made.lines(),
                made.links(),
                made.keptLinks(),
                made.kilometres(),
                made.leftOut(),
                made.notUnderstood(),
                null);
    }

    private static FileResult result(FeatureFileView made) {
        return new FileResult(
                made.importId(), null, made.features(), made.entered(), null, null, made.leftOut(), Map.of(), null);
    }

    private static FileResult result(TrafficFileView made) {
        return new FileResult(
                made.importId(), null, made.features(), made.entered(), null, null, made.leftOut(), Map.of(), null);
    }

    private static FileResult result(TrafficFileTrial found) {
        return new FileResult(
                null, null, found.features(), 0, null, null, Map.of(), Map.of(), found.withRows(MOST_ROWS_KEPT));
    }
}
