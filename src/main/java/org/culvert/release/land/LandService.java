package org.culvert.release.land;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.Bounds;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.GeoJsonPolygons;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.culvert.platform.InvalidException;
import org.culvert.platform.LargestBody;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.sight.Generalised;
import org.culvert.platform.sight.Sight;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.Land.Kind;
import org.culvert.release.rules.Rule;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** Keeps land areas, and finds those about a place. */
@ApplicationScoped
public class LandService {
    /** What every land area says of itself. */
    public static final String NOTE =
            "This is what its source says of this land, and no more: a place outside of it is not"
                    + " thereby free of what it tells of. Check your local code and your licensed vet.";

    private static final String RESOURCE = "land-area";

    /** The two kinds of GeoJSON geometry that land may be of. */
    public enum GeometryType {
        Polygon,
        MultiPolygon
    }

    /**
     * Polygons of GeoJSON (RFC 7946).
     *
     * @param coordinates longitude before latitude, on WGS 84: of a Polygon its rings, of a MultiPolygon its polygons
     */
    public record GeometryEntry(
            @NotNull GeometryType type, @NotNull List<Object> coordinates) {}

    /**
     * A land area as entered.
     *
     * @param name what people call it; of land of one owner no person's name, of a jurisdiction its ISO 3166 code
     * @param source who says so, or whose map it is and of when
     * @param from the first day on which it holds
     * @param until the first day on which it no longer holds; null: nobody knows
     */
    @LargestBody(bytes = 10_000_000)
    public record LandEntry(
            @NotNull Kind kind,
            @NotBlank @Size(max = 200) String name,
            @NotBlank @Size(max = 2000) String source,
            @NotNull LocalDate from,
            @Nullable LocalDate until,
            @NotNull @Valid GeometryEntry geometry) {}

    /**
     * What is known of it no longer holds.
     *
     * @param until the first day on which it does not
     */
    public record LandEnding(
            @NotNull LocalDate until,
            @NotBlank @Size(max = 2000) String reason) {}

    /**
     * A land area as shown.
     *
     * @param bbox west, south, east and north of it, in degrees
     * @param geometry null in lists
     */
    public record LandAreaView(
            UUID id,
            String kind,
            String name,
            String source,
            LocalDate from,
            @Nullable LocalDate until,
            double[] bbox,
            @Nullable Geometry geometry,
            String note,
            RecordView record)
            implements Generalised {

        /** Longitude before latitude, outer rings counterclockwise. */
        public record Geometry(String type, List<Object> coordinates) {}

        /** Nothing of where nests are: a name and a source would lead there as well. */
        @Override
        public Map<String, Object> generalised(double gridDegrees) {
            return Map.of();
        }
    }

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<LandArea, UUID> {}

    private final Rows rows;
    private final EntityManager entities;
    private final RecordViews records;
    private final Sight sight;

    LandService(Rows rows, EntityManager entities, RecordViews records, Sight sight) {
        this.rows = rows;
        this.entities = entities;
        this.records = records;
        this.sight = sight;
    }

    /** @throws InvalidException naming the part of the geometry that is wrong, and where it lies */
    @Transactional
    public LandAreaView enter(LandEntry entry) {
        return enter(entry, null);
    }

    /**
     * The same from a file.
     *
     * @param importId of the file that it came in, or null
     */
    @Transactional
    public LandAreaView enter(LandEntry entry, @Nullable UUID importId) {
        requireOrder(entry.from(), entry.until());
        if (entry.kind() == Kind.jurisdiction && !entry.name().matches(Rule.ISO_3166)) {
            throw InvalidException.of(
                    "name", "A jurisdiction is named by its code.", "an ISO 3166 code, such as AU-QLD for Queensland");
        }
        Geometry shape;
        try {
            shape = GeoJsonPolygons.read(
                    entry.geometry().type().name(), entry.geometry().coordinates());
        } catch (CoordinateException wrong) {
            Position other = wrong.otherReading();
            throw InvalidException.of(
                    "geometry." + wrong.field(),
                    wrong.whatIsWrong(),
                    wrong.whatWouldBeRight(),
                    other == null
                            ? null
                            : Map.of("decimalLatitude", other.latitude(), "decimalLongitude", other.longitude()));
        }
        LandArea row = LandArea.of(entry, shape);
        row.importedBy(importId);
        rows.persistAndFlush(row);
        return view(row, true);
    }

    @Transactional
    public LandAreaView getArea(UUID id) {
        return view(require(id), true);
    }

    /**
     * Land areas, newest record first, without their geometry. Nesting grounds are listed for those who may see where they
     * are.
     *
     * @param name a part of the name, in capitals or not
     * @param day a day on which they hold
     */
    @Transactional
    public Page<LandAreaView> listAreas(
            @Nullable Kind kind, @Nullable String name, @Nullable LocalDate day, int limit, @Nullable UUID before) {
        List<String> conditions = new ArrayList<>(List.of("1 = 1"));
        Map<String, Object> values = new HashMap<>();
        if (!sight.seesExactly(RESOURCE, "geometry")) {
            conditions.add("kind <> :hidden");
            values.put("hidden", Kind.nestingGround.name());
        }
        if (before != null) {
            conditions.add("id < :before");
            values.put("before", before);
        }
        if (kind != null) {
            conditions.add("kind = :kind");
            values.put("kind", kind.name());
        }
        if (name != null) {
            conditions.add("locate(lower(:name), lower(name)) > 0");
            values.put("name", name.strip());
        }
        if (day != null) {
            conditions.add("fromDay <= :day and (untilDay is null or untilDay > :day)");
            values.put("day", day);
        }
        List<LandArea> found = rows.find(String.join(" and ", conditions) + " order by id desc", values)
                .page(0, limit + 1)
                .list();
        return Page.of(found, limit, row -> view(row, false), row -> row.id().toString());
    }

    /** Says from which day on it no longer holds, where need be anew; what was found with it before stays as it was. */
    @Transactional
    public LandAreaView end(UUID id, LandEnding ending) {
        LandArea row = require(id);
        requireOrder(row.fromDay, ending.until());
        row.end(ending.until(), ending.reason());
        rows.flush();
        return view(row, true);
    }

    /**
     * The land that holds on a day and may lie within a circle: its box meets the circle's box. In the order in which it was
     * entered.
     *
     * @param metres radius of the circle
     */
    @Transactional
    public List<Land> around(Position centre, double metres, LocalDate day) {
        Bounds box = Bounds.around(centre, metres);
        String beside = box.west() <= box.east()
                ? "l.west <= :east and l.east >= :west"
                : "(l.west <= :east or l.east >= :west)";
        return entities
                .createQuery(
                        "select l.kind, l.name, l.shape, l.source, l.untilDay from LandArea l where " + beside
                                + " and l.south <= :north and l.north >= :south and l.fromDay <= :day"
                                + " and (l.untilDay is null or l.untilDay > :day) order by l.id",
                        Object[].class)
                .setParameter("west", box.west())
                .setParameter("south", box.south())
                .setParameter("east", box.east())
                .setParameter("north", box.north())
                .setParameter("day", day)
                .getResultList()
                .stream()
                .map(LandService::land)
                .toList();
    }

    private static Land land(Object[] row) {
        return new Land(
                Kind.valueOf((String) row[0]),
                (String) row[1],
                Shapes.fromWkb((byte[]) row[2]),
                (String) row[3],
                (LocalDate) row[4]);
    }

    private LandArea require(UUID id) {
        return rows.findByIdOptional(id).orElseThrow(() -> new NotFoundException("land area", id));
    }

    private static void requireOrder(LocalDate from, @Nullable LocalDate until) {
        if (until != null && !until.isAfter(from)) {
            throw InvalidException.of("until", "It ends before it begins.", "a day after " + from);
        }
    }

    private LandAreaView view(LandArea row, boolean whole) {
        LandAreaView.Geometry geometry = null;
        if (whole) {
            Geometry shape = Shapes.fromWkb(row.shape);
            geometry = new LandAreaView.Geometry(GeoJsonPolygons.type(shape), GeoJsonPolygons.coordinates(shape));
        }
        return new LandAreaView(
                row.id(),
                row.kind,
                row.name,
                row.source,
                row.fromDay,
                row.untilDay,
                new double[] {row.west, row.south, row.east, row.north},
                geometry,
                NOTE,
                records.of(row));
    }
}
