package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.stats.rate.StretchCounts;
import org.culvert.hotspot.stats.rate.StretchCounts.Choice;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.road.traffic.PeriodTraffic;
import org.culvert.road.traffic.TrafficReader;
import org.jspecify.annotations.Nullable;

/** Answers questions about any stretch of a road. */
@ApplicationScoped
public class StretchQuestionService {
    private static final int USUAL_YEARS = 5;
    public static final int MOST_YEARS = 30;
    private static final double LEVEL = 0.95;

    /** To a roads authority, stretches that differ by little must not tell what lies between their ends. */
    static final double TOLD_STEP_METRES = 100;

    private final StandingWorks standing;
    private final CollisionReader collisions;
    private final SeasonReader seasons;
    private final PublishedFigures published;
    private final TrafficReader traffic;
    private final RoadService roads;
    private final RegionService regions;
    private final AuthoritySight authority;
    private final Clock clock;

    StretchQuestionService(
            StandingWorks standing,
            CollisionReader collisions,
            SeasonReader seasons,
            PublishedFigures published,
            TrafficReader traffic,
            RoadService roads,
            RegionService regions,
            AuthoritySight authority,
            Clock clock) {
        this.standing = standing;
        this.collisions = collisions;
        this.seasons = seasons;
        this.published = published;
        this.traffic = traffic;
        this.roads = roads;
        this.regions = regions;
        this.authority = authority;
        this.clock = clock;
    }

    /** The years of a question; the last one is over. */
    record Years(int first, int last) {
        int count() {
            return last - first + 1;
        }

        LocalDate from() {
            return LocalDate.of(first, 1, 1);
        }

        LocalDate to() {
            return LocalDate.of(last, 12, 31);
        }
    }

    @Transactional
    public StretchAnswer answer(StretchQuestion question) {
        Integer smallest = authority.smallestCount();
        Years years = years(question.yearFrom(), question.yearTo());
        RunSettings.Season season =
                seasons.read(question.taxonGroup(), question.months(), question.seasonWindow(), years.to());
        requireSteps(question, smallest);
        CurrentRoads current = roads.current();
        PeriodTraffic ofYears = traffic.find(current, years.first(), years.last());
        RoadPieces pieces = RoadPieces.of(current.network(), ofYears.links()::vehiclesPerDay);
        List<RoadPieces.Part> parts =
                pieces.requireStretch("", question.road(), question.fromChainageMetres(), question.toChainageMetres());
        var writer = new StretchWriter(question, years, season, parts, published, smallest);
        if (authority.withholdsPlacesOf(question.taxonGroup())) {
            return writer.withheld();
        }
        Collisions read = collisions
                .read(years.from(), years.to(), season, question.taxonGroup(), current)
                .at(ofYears);
        StandingWorks.Places works = standing.find(pieces, years.from(), years.to(), null);
        Set<String> classes = new TreeSet<>();
        parts.forEach(part -> classes.addAll(pieces.classes(part)));
        RoadModel model = RoadModel.of(
                pieces,
                read.ofGroup(),
                works.parts(),
                classes,
                Objects.requireNonNullElse(question.windowMetres(), 1000.0),
                years.count());
        List<String> plainly = new ArrayList<>(works.notPlaced());
        if (works.touch(parts)) {
            plainly.add("Works stood on this stretch in these years: what is expected of it is what it would have"
                    + " without them.");
        }
        StretchCounts counts = counts(
                question, years, pieces, parts, read, prediction(model, parts, years, plainly), groupsTold(smallest));
        return writer.told(counts, model, read, current.number(), plainly);
    }

    private static StretchCounts.@Nullable Prediction prediction(
            RoadModel model, List<RoadPieces.Part> parts, Years years, List<String> plainly) {
        String obstacle = parts.stream()
                .map(model::obstacle)
                .filter(words -> !words.isEmpty())
                .findFirst()
                .orElse("");
        if (!obstacle.isEmpty()) {
            plainly.add(obstacle);
            return null;
        }
        double length =
                parts.stream().mapToDouble(RoadPieces.Part::lengthMetres).sum();
        double predicted = parts.stream()
                .mapToDouble(part -> model.expected(part, years.count()))
                .sum();
        return new StretchCounts.Prediction(predicted, model.overdispersion(length), LEVEL);
    }

    /** On one road as far as counting goes: carriageways count together. */
    private static StretchCounts counts(
            StretchQuestion question,
            Years years,
            RoadPieces pieces,
            List<RoadPieces.Part> parts,
            Collisions read,
            StretchCounts.@Nullable Prediction prediction,
            Function<Set<String>, String> groups) {
        List<StretchCounts.Collision> along = new ArrayList<>();
        for (Collisions.Placed placed : read.ofGroup()) {
            RoadPieces.Piece piece = pieces.pieceOf(placed.link());
            if (parts.stream().anyMatch(part -> part.piece().number() == piece.number())) {
                along.add(new StretchCounts.Collision(
                        question.road(),
                        pieces.chainage(placed.link(), placed.metres()),
                        placed.uncertaintyMetres(),
                        placed.day().getYear(),
                        String.format(Locale.ROOT, "%02d", placed.day().getMonthValue()),
                        question.taxonGroup() == null ? groups.apply(placed.groups()) : question.taxonGroup()));
            }
        }
        return StretchCounts.of(
                new StretchCounts.Stretch(
                        question.road(),
                        question.fromChainageMetres(),
                        question.toChainageMetres(),
                        choice(question.chosenBeforeLooking())),
                along,
                years.first(),
                years.last(),
                prediction);
    }

    /** What animals of some groups are called to the asker: to an authority, a sensitive group is as one that is not known. */
    private Function<Set<String>, String> groupsTold(@Nullable Integer smallest) {
        Map<String, Boolean> withheld = new HashMap<>();
        String unknown = smallest == null ? "not known" : "not known, or not told to you";
        return groups -> groups.isEmpty()
                        || groups.stream()
                                .anyMatch(group -> withheld.computeIfAbsent(group, authority::withholdsPlacesOf))
                ? unknown
                : String.join(" and ", new TreeSet<>(groups));
    }

    static Choice choice(@Nullable Boolean beforeLooking) {
        if (beforeLooking == null) {
            return Choice.NOT_STATED;
        }
        return beforeLooking ? Choice.BEFORE_LOOKING : Choice.AFTER_LOOKING;
    }

    private static void requireSteps(StretchQuestion question, @Nullable Integer smallest) {
        if (smallest == null) {
            return;
        }
        requireStep("fromChainageMetres", question.fromChainageMetres());
        requireStep("toChainageMetres", question.toChainageMetres());
    }

    /** @throws InvalidException where it is no whole hundred of metres */
    public static void requireStep(String field, double chainage) {
        if (chainage % TOLD_STEP_METRES != 0) {
            throw InvalidException.of(
                    field,
                    "Counts are told to you from one whole hundred metres to another.",
                    "a whole number of hundreds, such as 2400");
        }
    }

    Years years(@Nullable Integer from, @Nullable Integer to) {
        int over = clock.instant().atZone(regions.zone()).getYear() - 1;
        int last = to == null ? over : to;
        if (last > over) {
            throw InvalidException.of("yearTo", "That year is not over.", "at most " + over);
        }
        int first = from == null ? last - USUAL_YEARS + 1 : from;
        if (first > last) {
            throw InvalidException.of("yearFrom", "The years end before they begin.", "at most " + last);
        }
        if (last - first >= MOST_YEARS) {
            throw InvalidException.of(
                    "yearFrom", "So many years cannot be asked for.", "at most " + MOST_YEARS + " years");
        }
        return new Years(first, last);
    }
}
