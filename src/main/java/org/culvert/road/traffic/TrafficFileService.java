package org.culvert.road.traffic;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.culvert.platform.Actor;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.platform.RegionService;
import org.culvert.platform.file.ReadingWatch;
import org.culvert.platform.file.TemporaryCopy;
import org.culvert.road.ManyPlaces;
import org.culvert.road.PlacesOnRoads;
import org.culvert.road.RoadService;
import org.culvert.road.file.FileOfFeatures;
import org.culvert.road.file.FileOfFeatures.Feature;
import org.culvert.road.file.SentFile;
import org.culvert.road.traffic.TrafficFileTrial.CountFault;
import org.culvert.road.traffic.TrafficFileTrial.CountRow;
import org.culvert.road.traffic.TrafficFileTrial.CountUnderstood;

/** Takes counts of traffic from files: tries what would come of one, row by row, or enters it. */
@ApplicationScoped
public class TrafficFileService {
    private static final int ROWS_AT_ONCE = 100;
    private static final int MOST_ROWS_SHOWN = 1000;

    private final ObjectMapper mapper;
    private final TrafficCountService counts;
    private final ManyPlaces places;
    private final RoadService roads;
    private final RegionService regions;
    private final EntityManager entities;
    private final Actor actor;
    private final Clock clock;

    TrafficFileService(
            ObjectMapper mapper,
            TrafficCountService counts,
            ManyPlaces places,
            RoadService roads,
            RegionService regions,
            EntityManager entities,
            Actor actor,
            Clock clock) {
        this.mapper = mapper;
        this.counts = counts;
        this.places = places;
        this.roads = roads;
        this.regions = regions;
        this.entities = entities;
        this.actor = actor;
        this.clock = clock;
    }

    /** Receives what becomes of each row. */
    private interface Rows {
        void understood(String at, TrafficRowReader.Read read);

        void refused(String at, InvalidException wrong);
    }

    /**
     * What would come of a file. A column that nobody named is taken to be the only attribute that is called like one.
     *
     * @throws InvalidException where no feature of it can be read at all
     */
    @Transactional
    public TrafficFileTrial tryFile(TrafficFileSaid said, SentFile sent) {
        return tryFile(said, sent, ReadingWatch.NOBODY);
    }

    /** The same, where somebody waits for it. */
    @Transactional
    public TrafficFileTrial tryFile(TrafficFileSaid said, SentFile sent, ReadingWatch watch) {
        TrafficFileSettings asked = TrafficFileSettings.of(said);
        try (TemporaryCopy copy = TemporaryCopy.of(sent.octets())) {
            List<String> attributes = FileOfFeatures.columns(mapper, sent, copy);
            List<TrafficFileTrial.CountColumn> columns = new ArrayList<>();
            TrafficFileSettings settings = asked.with(proposed(asked, attributes, columns));
            List<CountRow> rows = new ArrayList<>();
            int[] told = new int[2];
            List<CountFault> missing = missing(settings);
            int features = 0;
            if (missing.isEmpty()) {
                features = read(settings, sent, copy, watch, new Rows() {
                            @Override
                            public void understood(String at, TrafficRowReader.Read read) {
                                told[0]++;
                                add(
                                        rows,
                                        new CountRow(at, CountUnderstood.of(read.figures(), read.place()), List.of()));
                            }

                            @Override
                            public void refused(String at, InvalidException wrong) {
                                told[1]++;
                                add(rows, new CountRow(at, null, faults(wrong)));
                            }
                        })
                        .features();
            }
            return new TrafficFileTrial(
                    copy.sha256(),
                    features,
                    attributes,
                    columns,
                    missing,
                    told[0],
                    told[1],
                    rows,
                    told[0] + told[1] - rows.size());
        }
    }

    /** @throws InvalidException naming the first row that is refused, unless such rows are left out; then nothing is entered */
    @Transactional
    public TrafficFileView enter(TrafficFileSaid said, SentFile sent) {
        return enter(said, sent, ReadingWatch.NOBODY);
    }

    /** The same, where somebody waits for it. */
    @Transactional
    public TrafficFileView enter(TrafficFileSaid said, SentFile sent, ReadingWatch watch) {
        TrafficFileSettings settings = TrafficFileSettings.of(said);
        settings.requireEnough();
        List<UUID> ids = new ArrayList<>();
        List<CountRow> refused = new ArrayList<>();
        Map<String, Integer> leftOut = new TreeMap<>();
        try (TemporaryCopy copy = TemporaryCopy.of(sent.octets())) {
            UUID importId = note(copy.sha256());
            ZoneId zone = regions.zone();
            FileOfFeatures.Told told = read(settings, sent, copy, watch, new Rows() {
                @Override
                public void understood(String at, TrafficRowReader.Read read) {
                    ids.add(counts.add(read.figures(), read.place(), zone, importId)
                            .id());
                    // Sent together, and let go: what the session holds is looked through at each flush
                    if (ids.size() % ROWS_AT_ONCE == 0) {
                        entities.flush();
                        entities.clear();
                    }
                }

                @Override
                public void refused(String at, InvalidException wrong) {
                    if (!settings.leavesOut()) {
                        throw within(at, wrong);
                    }
                    leftOut.merge(wrong.errors().get(0).detail(), 1, Integer::sum);
                    add(refused, new CountRow(at, null, faults(wrong)));
                }
            });
            told.leftOut().forEach((reason, number) -> leftOut.merge(reason, number, Integer::sum));
            return new TrafficFileView(importId, copy.sha256(), told.features(), ids.size(), leftOut, refused, ids);
        }
    }

    private FileOfFeatures.Told read(
            TrafficFileSettings settings, SentFile sent, TemporaryCopy copy, ReadingWatch watch, Rows rows) {
        PlacesOnRoads onRoads = places.open();
        int network = onRoads.roads().orElseGet(roads::current).number();
        var reader = new TrafficRowReader(settings, onRoads, network, clock, regions.zone());
        Set<List<Object>> known = known();
        var taker = new FileOfFeatures.Taker() {
            private int taken;

            @Override
            public void take(Feature feature) {
                watch.hear(ReadingWatch.Step.features, ++taken, 0);
                TrafficRowReader.Read read;
                try {
                    read = reader.read(feature);
                    if (!known.add(key(TrafficCount.of(read.figures(), read.place(), ZoneOffset.UTC)))) {
                        throw InvalidException.of(
                                "vehiclesPerDay",
                                "This count was entered before, or stands twice in the file.",
                                "each count once; a count that was wrong is corrected");
                    }
                } catch (InvalidException wrong) {
                    rows.refused(feature.at(), wrong);
                    return;
                }
                rows.understood(feature.at(), read);
            }

            @Override
            public void refuse(String at, InvalidException wrong) {
                rows.refused(at, wrong);
            }
        };
        List<String> attributes =
                settings.columns().values().stream().distinct().toList();
        return new FileOfFeatures(mapper, sent, copy, List.of(Kind.POINT, Kind.LINE), attributes, taker).read();
    }

    private Set<List<Object>> known() {
        Set<List<Object>> known = new HashSet<>();
        List<TrafficCount> standing = counts.listStanding();
        standing.forEach(count -> known.add(key(count)));
        standing.forEach(entities::detach);
        return known;
    }

    /** What no two counts have in common: place to the metre, period, direction, how it was counted, and the figure. */
    private static List<Object> key(TrafficCount count) {
        return Arrays.asList(
                count.road,
                count.carriageway,
                Math.round(count.fromChainageMetres),
                Math.round(count.toChainageMetres),
                count.fromDay,
                count.toDay,
                count.directions,
                count.direction,
                count.kind,
                count.measure,
                count.vehiclesPerDay);
    }

    private static Map<TrafficColumn, String> proposed(
            TrafficFileSettings asked, List<String> attributes, List<TrafficFileTrial.CountColumn> columns) {
        Map<TrafficColumn, String> read = new EnumMap<>(TrafficColumn.class);
        for (TrafficColumn column : TrafficColumn.values()) {
            String named = asked.column(column);
            if (named != null && !attributes.contains(named)) {
                throw InvalidException.of(
                        column.parameter(),
                        "The file has no attribute " + named + ".",
                        attributes.isEmpty() ? "a file with attributes" : "one of: " + String.join(", ", attributes));
            }
            List<String> like = column.among(attributes);
            boolean yearIsSaid = (column == TrafficColumn.FROM || column == TrafficColumn.TO)
                    && read.containsKey(TrafficColumn.YEAR);
            boolean proposes = named == null && like.size() == 1 && !yearIsSaid;
            String attribute = proposes ? like.get(0) : named;
            if (attribute != null) {
                read.put(column, attribute);
            }
            columns.add(new TrafficFileTrial.CountColumn(
                    column.parameter(),
                    attribute,
                    proposes,
                    like.stream().filter(other -> !other.equals(attribute)).toList()));
        }
        return read;
    }

    private static List<CountFault> missing(TrafficFileSettings settings) {
        try {
            settings.requireEnough();
            return List.of();
        } catch (InvalidException wrong) {
            return faults(wrong);
        }
    }

    private static List<CountFault> faults(InvalidException wrong) {
        return wrong.errors().stream()
                .map(error -> new CountFault(error.field(), error.detail(), error.wanted()))
                .toList();
    }

    private static void add(List<CountRow> rows, CountRow row) {
        if (rows.size() < MOST_ROWS_SHOWN) {
            rows.add(row);
        }
    }

    private static InvalidException within(String at, InvalidException wrong) {
        return new InvalidException(wrong.errors().stream()
                .map(error -> new FieldError(
                        error.field().startsWith(at) ? error.field() : at + "." + error.field(),
                        error.detail(),
                        error.wanted(),
                        error.otherReading()))
                .toList());
    }

    private UUID note(String sha256) {
        UUID id = UUID.randomUUID();
        entities.createNativeQuery("INSERT INTO imports (id, kind, file_name, sha256, recorded_at, recorded_by)"
                        + " VALUES (?1, 'trafficCounts', 'trafficCounts', ?2, ?3, ?4)")
                .setParameter(1, id)
                .setParameter(2, sha256)
                .setParameter(3, OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                .setParameter(4, Objects.requireNonNull(actor.accountId()))
                .executeUpdate();
        return id;
    }
}
