package org.culvert.exchange.features;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.geo.Position;
import org.culvert.hotspot.AnnualRunService;
import org.culvert.hotspot.AnnualRunView;
import org.culvert.hotspot.CouncilAreas;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.HotspotRunService;
import org.culvert.hotspot.RunView;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.platform.sight.DisclosureService;
import org.culvert.platform.sight.Sight;
import org.culvert.taxon.TaxonService;
import org.jspecify.annotations.Nullable;

/**
 * Hotspots of the latest annual run whose cells are all done, as roads authorities see them. Where the network opens them to
 * everybody, others get no stretch with a small count, and of a group with a sensitive species no time of year.
 */
@ApplicationScoped
class HotspotSource implements FeatureSource {
    private static final Pattern ID = Pattern.compile("([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})-(\\d{1,9})");

    private final AnnualRunService annualRuns;
    private final HotspotRunService runs;
    private final DisclosureService disclosure;
    private final TaxonService taxa;
    private final RegionService region;
    private final Sight sight;
    private final CouncilAreas councils;
    private final Clock clock;

    HotspotSource(
            AnnualRunService annualRuns,
            HotspotRunService runs,
            DisclosureService disclosure,
            TaxonService taxa,
            RegionService region,
            Sight sight,
            CouncilAreas councils,
            Clock clock) {
        this.annualRuns = annualRuns;
        this.runs = runs;
        this.disclosure = disclosure;
        this.taxa = taxa;
        this.region = region;
        this.sight = sight;
        this.councils = councils;
        this.clock = clock;
    }

    @Override
    public String id() {
        return "hotspots";
    }

    @Override
    public String title() {
        return "Hotspots";
    }

    @Override
    public String description() {
        return "Stretches of road on which more animals of a group are struck in a season than a named kind of chance allows,"
                + " at a stated error rate: those of the latest annual run of which every group and season is done. Ask for"
                + " one group and season by taxonGroup and season. A stretch of a group with a sensitive species is told"
                + " to the cells of a grid, as the box around them, or not at all.";
    }

    @Override
    public ShapeType shapeType() {
        return ShapeType.MULTI_LINE_STRING;
    }

    @Override
    public Class<? extends MapFeature> feature() {
        return HotspotFeature.class;
    }

    @Override
    public Class<? extends Record> properties() {
        return HotspotProperties.class;
    }

    @Override
    public Map<String, String> words() {
        return Map.ofEntries(
                Map.entry("rank", "Rank within its group and season, by excess"),
                Map.entry("road", "Label of the road"),
                Map.entry("owner", "Owners of the links on which there were collisions"),
                Map.entry(
                        "council",
                        "Council area in which the middle of the stretch lies; null where none is on record, and of a sensitive species"),
                Map.entry("fromChainageMetres", "Chainage at which the stretch begins, in metres"),
                Map.entry("toChainageMetres", "Chainage at which the stretch ends, in metres"),
                Map.entry("lengthMetres", "Length of the stretch, in metres"),
                Map.entry("incidents", "Collisions counted there"),
                Map.entry("intervalLow", "Lower end of the 95 % interval of the count"),
                Map.entry("intervalHigh", "Upper end of the 95 % interval of the count"),
                Map.entry("expected", "Collisions that the kind of chance expects there"),
                Map.entry("excess", "Collisions counted less those expected"),
                Map.entry("adjustedP", "p adjusted for all places of the network"),
                Map.entry("incidentsPerKilometreAndYear", "Collisions counted per kilometre and year"),
                Map.entry("taxonGroup", "Key of the group of animals; null for all animals"),
                Map.entry("season", "Time of year that counts; null where it is not told"),
                Map.entry("periodFromYear", "Year in which the counting begins"),
                Map.entry("periodToYear", "Year in which the counting ends"),
                Map.entry("periodTo", "Last day that counts; null where it is not told"),
                Map.entry("chance", "Kind of chance that the stretch is judged against"),
                Map.entry("alpha", "Error rate of this group and season"),
                Map.entry("errorRateClaimed", "Whether the error rate is claimed of the real roads"),
                Map.entry("errorRateSentence", "What the word hotspot claims here; null where it is not told"));
    }

    @Override
    public Set<String> filters() {
        return Set.of("taxonGroup", "season", "road", "owner", "council", "rank", "errorRateClaimed");
    }

    @Override
    public String time() {
        return "periodTo";
    }

    @Override
    public boolean isClosed() {
        return !isOwnEvidence() && !disclosure.settings().publicHotspots();
    }

    /** Whether the asker has the network's road evidence, and not only what it opens to everybody. */
    private boolean isOwnEvidence() {
        return sight.sees("run", "result");
    }

    @Override
    public Slice page(FeatureQuery query, int limit, @Nullable String after) {
        List<RunView> cells = cells();
        Matcher cursor = after == null ? null : ID.matcher(after);
        int first = cursor == null ? 0 : cellOf(cursor, cells);
        int lastRank = cursor == null ? 0 : Integer.parseInt(cursor.group(2));
        List<MapFeature> features = new ArrayList<>();
        for (int cell = first; cell < cells.size(); cell++) {
            for (HotspotFeature found : find(cells.get(cell), query)) {
                if (cell == first && found.properties().rank() <= lastRank) {
                    continue;
                }
                if (features.size() == limit) {
                    return new Slice(features, (String) features.get(limit - 1).id());
                }
                features.add(found);
            }
        }
        return new Slice(features, null);
    }

    @Override
    public long count(FeatureQuery query) {
        return cells().stream().mapToLong(cell -> find(cell, query).size()).sum();
    }

    @Override
    public Optional<MapFeature> find(String id) {
        Matcher told = ID.matcher(id);
        if (!told.matches()) {
            return Optional.empty();
        }
        return cells().stream()
                .filter(cell -> cell.id().toString().equals(told.group(1)))
                .flatMap(cell -> find(cell, FeatureQuery.ALL).stream())
                .filter(feature -> feature.id().equals(id))
                .map(MapFeature.class::cast)
                .findFirst();
    }

    private List<RunView> cells() {
        return annualRuns.findLatestWhole().map(AnnualRunView::runs).orElse(List.of());
    }

    private static int cellOf(Matcher cursor, List<RunView> cells) {
        if (cursor.matches()) {
            for (int cell = 0; cell < cells.size(); cell++) {
                if (cells.get(cell).id().toString().equals(cursor.group(1))) {
                    return cell;
                }
            }
        }
        throw InvalidException.of(
                "cursor",
                "This is no cursor of the latest annual run.",
                "that of a next link; begin again if another annual run has come to its end meanwhile");
    }

    private List<HotspotFeature> find(RunView cell, FeatureQuery query) {
        Object wanted = query.wanted("taxonGroup");
        String group = cell.settings().taxonGroup();
        if (wanted != null && !wanted.equals(group)) {
            return List.of();
        }
        HotspotReport report = runs.getReport(cell.id());
        boolean own = isOwnEvidence();
        boolean sensitive = group != null && taxa.findStrictestGrid(group).isPresent();
        boolean withSeason = own || !sensitive;
        int smallest = own ? 0 : disclosure.settings().smallestCount();
        CouncilAreas.OnADay areas =
                councils.open(clock.instant().atZone(region.zone()).toLocalDate());
        List<HotspotFeature> found = new ArrayList<>();
        for (HotspotReport.Stretch stretch : report.hotspots()) {
            HotspotProperties properties =
                    HotspotProperties.of(stretch, sensitive ? null : council(stretch, areas), report, withSeason);
            if (stretch.incidents() >= smallest
                    && query.time().meets(properties.periodTo(), region.zone())
                    && query.fits(properties)
                    && query.lies(stretch.lines())) {
                found.add(new HotspotFeature(
                        "Feature", cell.id() + "-" + stretch.rank(), Shape.lines(stretch.lines()), properties, null));
            }
        }
        return found;
    }

    /** By the vertex in the middle of what is told of the stretch; null where no area is on record there. */
    private static @Nullable String council(HotspotReport.Stretch stretch, CouncilAreas.OnADay areas) {
        double[][] line = stretch.lines().get(stretch.lines().size() / 2);
        double[] middle = line[line.length / 2];
        List<String> names = areas.at(new Position(middle[1], middle[0]));
        return names.isEmpty() ? null : String.join(", ", names);
    }
}
