package org.culvert.exchange.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** What was decided about the region before any die was thrown: the files of {@code demo-data}. */
record Settings(
        String name,
        long seed,
        ZoneId zone,
        Ground ground,
        LocalDate firstDay,
        LocalDate sixYearsEnd,
        LocalDate lastDay,
        int collisionIncidents,
        int otherIncidents,
        double duplicateShare,
        double lateEntryShare,
        double townReportingFactor,
        double townNearMetres,
        double townFarMetres,
        double yearlyGrowth,
        String roadsAuthority,
        String wildlifeAuthority,
        String network,
        List<Town> towns,
        List<Council> councils,
        List<Group> groups,
        List<Taxon> taxa,
        List<PlantSpec> plants,
        List<Caution> cautions) {

    /** What callers or rescuers should hear about a group. */
    record Caution(String taxonGroup, String audience, String words, String source) {}

    record Town(String name, double x, double y, int streets, double spacingMetres, double turnDegrees) {}

    record Council(String code, String name) {}

    /** How a taxon group is met: shares of the calls, hours, and weights of the twelve months. */
    record Group(
            String name,
            String label,
            String vaccinationNeeded,
            boolean pouch,
            boolean clutches,
            boolean introduced,
            double collisionShare,
            double otherShare,
            String activity,
            double deadShare,
            double youngShare,
            double[] months) {}

    record Taxon(Map<String, String> cells) {
        String scientificName() {
            return cell("scientificName");
        }

        String vernacularName() {
            return cell("vernacularName");
        }

        String group() {
            return cell("taxonGroup");
        }

        double weight() {
            return Double.parseDouble(cell("weight"));
        }

        String cell(String column) {
            String value = cells.get(column);
            if (value == null) {
                throw new IllegalArgumentException("taxa.csv has no column " + column);
            }
            return value;
        }
    }

    /**
     * What shall be planted: where it may lie is chosen later among the roads that fit.
     *
     * @param extraCollisions in the six years
     * @param until the last day of them, where they end before the six years do
     */
    record PlantSpec(
            String id,
            String trait,
            List<RoadClass> roadClasses,
            String taxonGroup,
            List<Integer> months,
            double lengthMetres,
            int extraCollisions,
            @Nullable LocalDate until,
            @Nullable Double wholeKmShare,
            String note) {}

    Town mainTown() {
        return towns.get(0);
    }

    Group group(String groupName) {
        return groups.stream()
                .filter(group -> group.name().equals(groupName))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no taxon group " + groupName));
    }

    /** The committed settings, from the class path. */
    static Settings committed() {
        Properties properties = new Properties();
        try {
            properties.load(new StringReader(file("region.properties")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, String> region = new HashMap<>();
        properties.stringPropertyNames().forEach(key -> region.put(key, properties.getProperty(key)));
        return of(region, Long.parseLong(value(region, "seed")));
    }

    Settings withSeed(long otherSeed) {
        return new Settings(
                name,
                otherSeed,
                zone,
                ground,
                firstDay,
                sixYearsEnd,
                lastDay,
                collisionIncidents,
                otherIncidents,
                duplicateShare,
                lateEntryShare,
                townReportingFactor,
                townNearMetres,
                townFarMetres,
                yearlyGrowth,
                roadsAuthority,
                wildlifeAuthority,
                network,
                towns,
                councils,
                groups,
                taxa,
                plants,
                cautions);
    }

    private static Settings of(Map<String, String> region, long seed) {
        return new Settings(
                value(region, "name"),
                seed,
                ZoneId.of(value(region, "zone")),
                new Ground(
                        number(region, "westLongitude"),
                        number(region, "southLatitude"),
                        number(region, "widthMetres"),
                        number(region, "heightMetres")),
                LocalDate.parse(value(region, "firstDay")),
                LocalDate.parse(value(region, "sixYearsEnd")),
                LocalDate.parse(value(region, "lastDay")),
                (int) number(region, "collisionIncidents"),
                (int) number(region, "otherIncidents"),
                number(region, "duplicateShare"),
                number(region, "lateEntryShare"),
                number(region, "townReportingFactor"),
                number(region, "townNearMetres"),
                number(region, "townFarMetres"),
                number(region, "yearlyGrowth"),
                value(region, "roadsAuthority"),
                value(region, "wildlifeAuthority"),
                value(region, "network"),
                Csv.read(file("towns.csv")).stream().map(Settings::town).toList(),
                Csv.read(file("councils.csv")).stream()
                        .map(row -> new Council(value(row, "code"), value(row, "name")))
                        .toList(),
                Csv.read(file("groups.csv")).stream().map(Settings::group).toList(),
                Csv.read(file("taxa.csv")).stream().map(Taxon::new).toList(),
                Csv.read(file("hotspots.csv")).stream().map(Settings::plant).toList(),
                Csv.read(file("cautions.csv")).stream()
                        .map(row -> new Caution(
                                value(row, "taxonGroup"),
                                value(row, "audience"),
                                value(row, "words"),
                                value(row, "source")))
                        .toList());
    }

    private static Town town(Map<String, String> row) {
        return new Town(
                value(row, "name"),
                number(row, "x"),
                number(row, "y"),
                (int) number(row, "streets"),
                number(row, "spacingMetres"),
                number(row, "turnDegrees"));
    }

    private static Group group(Map<String, String> row) {
        double[] months =
                List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec").stream()
                        .mapToDouble(month -> number(row, month))
                        .toArray();
        return new Group(
                value(row, "taxonGroup"),
                value(row, "name"),
                value(row, "vaccinationNeeded"),
                Boolean.parseBoolean(value(row, "pouch")),
                Boolean.parseBoolean(value(row, "clutches")),
                Boolean.parseBoolean(value(row, "introduced")),
                number(row, "collisionShare"),
                number(row, "otherShare"),
                value(row, "activity"),
                number(row, "deadShare"),
                number(row, "youngShare"),
                months);
    }

    private static PlantSpec plant(Map<String, String> row) {
        return new PlantSpec(
                value(row, "id"),
                value(row, "trait"),
                Arrays.stream(value(row, "roadClasses").split(";"))
                        .map(RoadClass::of)
                        .toList(),
                value(row, "taxonGroup"),
                Arrays.stream(value(row, "months").split(";"))
                        .map(Integer::valueOf)
                        .toList(),
                number(row, "lengthMetres"),
                (int) number(row, "extraCollisions"),
                value(row, "until").isEmpty() ? null : LocalDate.parse(value(row, "until")),
                value(row, "wholeKmShare").isEmpty() ? null : number(row, "wholeKmShare"),
                value(row, "note"));
    }

    private static double number(Map<String, String> row, String key) {
        return Double.parseDouble(value(row, key));
    }

    private static String value(Map<String, String> row, String key) {
        String value = row.get(key);
        if (value == null) {
            throw new IllegalArgumentException("the settings of the region lack " + key);
        }
        return value;
    }

    private static String file(String name) {
        try (InputStream in = Settings.class.getResourceAsStream("/demo-data/" + name)) {
            if (in == null) {
                throw new IllegalStateException("demo-data/" + name + " is not on the class path");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
