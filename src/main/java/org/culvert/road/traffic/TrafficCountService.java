package org.culvert.road.traffic;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.Bounds;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.RegionService;
import org.culvert.platform.ledger.Change;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Keeps counts of traffic. */
@ApplicationScoped
public class TrafficCountService {
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2200;

    /**
     * A count as it is entered.
     *
     * @param place where the counter stands, as places are given everywhere; the road there must be sure
     * @param station what whoever counts calls the place: years and directions of one place belong together by it
     * @param from the first day of the period
     * @param to the last day, included, at most 366 days in all
     * @param vehiclesPerDay average of vehicles a day
     * @param standardError of that average in vehicles a day; null where nobody says
     * @param daysCounted on how many days somebody or something counted; null where nobody says
     * @param direction of one direction which, such as {@code northbound}
     * @param heavyVehicleShare share of heavy vehicles from 0 to 1, as the source has them
     * @param source who counted or estimated, and where it is published
     */
    public record TrafficCountEntry(
            @NotNull PlaceAsGiven place,

            @Nullable @Size(max = TrafficFigures.LONGEST_NAME)
            String station,

            @NotNull LocalDate from,
            @NotNull LocalDate to,

            @NotNull @DecimalMin("0") @DecimalMax("1000000") Double vehiclesPerDay,

            @NotNull TrafficMeasure measure,

            @Nullable @DecimalMin("0") @DecimalMax("1000000")
            Double standardError,

            @Nullable @Min(1) @Max(TrafficFigures.MOST_DAYS) Integer daysCounted,
            @NotNull TrafficDirections directions,

            @Nullable @Size(max = TrafficFigures.LONGEST_NAME)
            String direction,

            @Nullable @DecimalMin("0") @DecimalMax("1") Double heavyVehicleShare,

            @NotNull TrafficCountKind kind,

            @NotBlank @Size(max = TrafficFigures.LONGEST_WORDS)
            String source,

            @Nullable @Size(max = TrafficFigures.LONGEST_WORDS)
            String words) {
        TrafficFigures figures() {
            return new TrafficFigures(
                    station,
                    from,
                    to,
                    vehiclesPerDay,
                    measure,
                    standardError,
                    daysCounted,
                    directions,
                    direction,
                    heavyVehicleShare,
                    kind,
                    source,
                    words);
        }
    }

    /** What can be corrected of a count; a field that is left out stays as it is, and so does its place. */
    public record TrafficCountCorrection(
            Change<PlaceAsGiven> place,
            Change<String> station,
            Change<LocalDate> from,
            Change<LocalDate> to,
            Change<Double> vehiclesPerDay,
            Change<TrafficMeasure> measure,
            Change<Double> standardError,
            Change<Integer> daysCounted,
            Change<TrafficDirections> directions,
            Change<String> direction,
            Change<Double> heavyVehicleShare,
            Change<TrafficCountKind> kind,
            Change<String> source,
            Change<String> words,
            @NotBlank @Size(max = 2000) String reason) {}

    /** Why a count is taken back. */
    public record TrafficCountWithdrawal(
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A count as others see it.
     *
     * @param fromChainageMetres chainage of the place; of a stretch where it begins
     * @param toChainageMetres where a stretch ends; at a point the same
     * @param networkNumber version of the network whose chainages these are
     * @param decimalLatitude of the point on the road, WGS 84; of a stretch of its middle
     * @param offsetMetres how far the place that was given lies from the road
     * @param year calendar year that it stands for: that of the middle of its period
     * @param withdrawnAt when it was taken back; null while it counts
     */
    public record TrafficCountView(
            UUID id,
            @Nullable String station,
            String road,
            @Nullable String carriageway,
            double fromChainageMetres,
            double toChainageMetres,
            int networkNumber,
            double decimalLatitude,
            double decimalLongitude,
            double offsetMetres,
            String verbatimPlace,
            double coordinateUncertaintyInMeters,
            LocalDate from,
            LocalDate to,
            int year,
            double vehiclesPerDay,
            String measure,
            @Nullable Double standardError,
            @Nullable Integer daysCounted,
            String directions,
            @Nullable String direction,
            @Nullable Double heavyVehicleShare,
            String kind,
            String source,
            @Nullable String words,
            @Nullable Instant withdrawnAt,
            @Nullable String withdrawnBecause,
            RecordView record) {}

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<TrafficCount, UUID> {}

    private final Rows rows;
    private final PlaceReading places;
    private final RoadService roads;
    private final RegionService regions;
    private final RecordViews records;
    private final Clock clock;

    TrafficCountService(
            Rows rows,
            PlaceReading places,
            RoadService roads,
            RegionService regions,
            RecordViews records,
            Clock clock) {
        this.rows = rows;
        this.places = places;
        this.roads = roads;
        this.regions = regions;
        this.records = records;
        this.clock = clock;
    }

    /** @throws InvalidException naming what is wrong, and {@code place} where the road is not sure */
    @Transactional
    public TrafficCountView enter(TrafficCountEntry entry) {
        entry.figures().check(clock, regions.zone());
        CountedPlace place =
                CountedPlace.at(places, entry.place(), roads.current().number());
        return view(keep(entry.figures(), place, null));
    }

    /** What has been checked and placed. */
    TrafficCount keep(TrafficFigures figures, CountedPlace place, @Nullable UUID importId) {
        TrafficCount count = add(figures, place, regions.zone(), importId);
        rows.flush();
        return count;
    }

    /** The same of one among many, which is sent to the database with others. */
    TrafficCount add(TrafficFigures figures, CountedPlace place, ZoneId zone, @Nullable UUID importId) {
        TrafficCount count = TrafficCount.of(figures, place, zone);
        count.importedBy(importId);
        rows.persist(count);
        return count;
    }

    @Transactional
    public TrafficCountView getCount(UUID id) {
        return view(require(id));
    }

    /**
     * Counts, newest record first, those that were withdrawn among them.
     *
     * @param road label of a road
     * @param year some day of which is in the period
     * @param box within which the place lies
     */
    @Transactional
    public Page<TrafficCountView> listCounts(
            @Nullable String road,
            @Nullable Integer year,
            @Nullable TrafficCountKind kind,
            @Nullable String station,
            @Nullable Bounds box,
            int limit,
            @Nullable UUID before) {
        List<String> conditions = new ArrayList<>(List.of("1 = 1"));
        Map<String, Object> values = new HashMap<>();
        if (before != null) {
            conditions.add("id < :before");
            values.put("before", before);
        }
        if (road != null) {
            conditions.add("lower(road) = lower(:road)");
            values.put("road", road.strip());
        }
        if (year != null) {
            if (year < FIRST_YEAR || year > LAST_YEAR) {
                throw InvalidException.of("year", "No such year is meant.", "a calendar year such as 2024");
            }
            conditions.add("fromDay <= :last and toDay >= :first");
            values.put("first", LocalDate.of(year, 1, 1));
            values.put("last", LocalDate.of(year, 12, 31));
        }
        if (kind != null) {
            conditions.add("kind = :kind");
            values.put("kind", kind.name());
        }
        if (station != null) {
            conditions.add("station = :station");
            values.put("station", station.strip());
        }
        if (box != null) {
            conditions.add("decimalLatitude between :south and :north");
            conditions.add(
                    box.west() <= box.east()
                            ? "decimalLongitude between :west and :east"
                            : "(decimalLongitude >= :west or decimalLongitude <= :east)");
            values.put("south", box.south());
            values.put("north", box.north());
            values.put("west", box.west());
            values.put("east", box.east());
        }
        List<TrafficCount> found = rows.find(String.join(" and ", conditions) + " order by id desc", values)
                .page(0, limit + 1)
                .list();
        records.lookUp(found);
        return Page.of(found, limit, this::view, count -> count.id().toString());
    }

    /** Corrects a count. Where it is moved, it is placed on the network that is current now. */
    @Transactional
    public TrafficCountView correct(UUID id, TrafficCountCorrection correction) {
        TrafficCount count = requireStanding(id);
        PlaceAsGiven moved = correction.place().value();
        if (correction.place().isMade()) {
            if (moved == null) {
                throw InvalidException.of("place", "This cannot be left open.", "a place, or leave the field out");
            }
            count.lieAt(CountedPlace.at(places, moved, roads.current().number()));
        }
        ZoneId zone = regions.zone();
        count.correct(correction, zone);
        count.figures().check(clock, zone);
        rows.flush();
        return view(count);
    }

    /** Takes a count back: it is kept and shown, and counts no longer. */
    @Transactional
    public TrafficCountView withdraw(UUID id, String reason) {
        TrafficCount count = requireStanding(id);
        count.withdraw(clock.instant(), reason);
        rows.flush();
        return view(count);
    }

    /** Counts that stand, in the order in which they were entered. */
    List<TrafficCount> listStanding() {
        return rows.list("withdrawnAt is null order by id");
    }

    private TrafficCount require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("traffic count", id));
    }

    private TrafficCount requireStanding(UUID id) {
        TrafficCount count = require(id);
        if (count.withdrawnAt != null) {
            throw new ConflictException("This count was withdrawn: " + count.withdrawnBecause);
        }
        return count;
    }

    private TrafficCountView view(TrafficCount count) {
        return new TrafficCountView(
                count.id(),
                count.station,
                count.road,
                count.carriageway,
                count.fromChainageMetres,
                count.toChainageMetres,
                count.networkNumber,
                count.decimalLatitude,
                count.decimalLongitude,
                count.offsetMetres,
                count.verbatimPlace,
                count.coordinateUncertaintyMetres,
                count.fromDay,
                count.toDay,
                count.year(),
                count.vehiclesPerDay,
                count.measure,
                count.standardError,
                count.daysCounted,
                count.directions,
                count.direction,
                count.heavyVehicleShare,
                count.kind,
                count.source,
                count.words,
                count.withdrawnAt,
                count.withdrawnBecause,
                records.of(
                        count,
                        count.toDay.plusDays(1).atStartOfDay(regions.zone()).toInstant()));
    }
}
