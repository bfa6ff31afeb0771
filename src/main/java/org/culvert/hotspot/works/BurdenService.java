package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.hotspot.CouncilAreas;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.stats.rate.RoadProfile;
import org.culvert.hotspot.stats.rate.Screening;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.culvert.road.traffic.PeriodTraffic;
import org.culvert.road.traffic.TrafficReader;
import org.jspecify.annotations.Nullable;

/** Screens all roads for windows that have more collisions than roads like them. */
@ApplicationScoped
public class BurdenService {
    private static final int MOST_WINDOWS = 500;
    private static final double LEVEL = 0.95;

    /** Of a whole network; finer ones take longer than anyone waits for an answer. */
    private static final double MOST_STEPS = 500_000;

    private final StretchQuestionService questions;
    private final StandingWorks standing;
    private final CollisionReader collisions;
    private final SeasonReader seasons;
    private final TrafficReader traffic;
    private final RoadService roads;
    private final AuthoritySight authority;
    private final CouncilAreas councils;
    private final RegionService regions;
    private final Clock clock;

    BurdenService(
            StretchQuestionService questions,
            StandingWorks standing,
            CollisionReader collisions,
            SeasonReader seasons,
            TrafficReader traffic,
            RoadService roads,
            AuthoritySight authority,
            CouncilAreas councils,
            RegionService regions,
            Clock clock) {
        this.questions = questions;
        this.standing = standing;
        this.collisions = collisions;
        this.seasons = seasons;
        this.traffic = traffic;
        this.roads = roads;
        this.authority = authority;
        this.councils = councils;
        this.regions = regions;
        this.clock = clock;
    }

    /**
     * @param yearFrom first calendar year; four before the last when left out
     * @param yearTo last calendar year, which is over
     * @param months numbers with commas between them
     * @param windowMetres length of the windows; 1000
     * @param stepMetres from one window to the next; a tenth of a window
     * @param limit how many windows to tell; 50
     * @param council name of a council area: windows of which an end or the middle lies there are told, and no others
     * @param largestVariation greatest coefficient of variation that passes in the peak search; 0.5
     */
    @Transactional
    public BurdenView burden(
            @Nullable Integer yearFrom,
            @Nullable Integer yearTo,
            @Nullable String taxonGroup,
            @Nullable String months,
            @Nullable String seasonWindow,
            @Nullable Double windowMetres,
            @Nullable Double stepMetres,
            @Nullable Integer limit,
            @Nullable Double largestVariation,
            @Nullable String council) {
        StretchQuestionService.Years years = questions.years(yearFrom, yearTo);
        RunSettings.Season season = seasons.read(taxonGroup, months, seasonWindow, years.to());
        double window = EffectQuestion.windowMetres(windowMetres);
        double step = EffectQuestion.metres("stepMetres", stepMetres, window / 10, 10, window);
        double variation = variation(largestVariation);
        int most = limit(limit);
        CouncilAreas.OnADay areas =
                councils.open(clock.instant().atZone(regions.zone()).toLocalDate());
        String named = areas.find(council);
        CurrentRoads current = roads.current();
        if (current.network().graph().totalLength() / step > MOST_STEPS) {
            throw InvalidException.of(
                    "stepMetres",
                    "The network has too many windows.",
                    "at least " + (int) Math.ceil(current.network().graph().totalLength() / MOST_STEPS));
        }
        PeriodTraffic ofYears = traffic.find(current, years.first(), years.last());
        RoadPieces pieces = RoadPieces.of(current.network(), ofYears.links()::vehiclesPerDay);
        Collisions read = collisions
                .read(years.from(), years.to(), season, taxonGroup, current)
                .at(ofYears);
        StandingWorks.Places works = standing.find(pieces, years.from(), years.to(), null);
        List<RoadProfile> profiles = RoadModel.profiles(pieces, read.ofGroup(), works.parts());
        var writer = new BurdenWriter(
                years,
                taxonGroup,
                season,
                window,
                step,
                most,
                variation,
                authority.smallestCount(),
                named,
                new PieceCouncils(current.network(), pieces, areas));
        if (authority.withholdsPlacesOf(taxonGroup)) {
            return writer.withheld(read, current.number());
        }
        if (profiles.stream().flatMap(profile -> profile.sections().stream()).allMatch(RoadProfile.Section::treated)) {
            return writer.nothing(read, current.number(), "Every road has works on it: none says what is usual.");
        }
        Screening screening = Screening.of(
                profiles, new Screening.Settings(RoadModel.SETTINGS, window, window, step, years.count(), LEVEL));
        return writer.told(screening, profiles, read, current.number(), works.notPlaced());
    }

    private static double variation(@Nullable Double asked) {
        if (asked == null) {
            return 0.5;
        }
        if (!(asked >= 0.01 && asked <= 2)) {
            throw InvalidException.of(
                    "largestVariation", "That is no limit for a coefficient of variation.", "0.01 to 2");
        }
        return asked;
    }

    private static int limit(@Nullable Integer asked) {
        if (asked == null) {
            return 50;
        }
        if (asked < 1 || asked > MOST_WINDOWS) {
            throw InvalidException.of("limit", "So many windows cannot be asked for.", "1 to " + MOST_WINDOWS);
        }
        return asked;
    }
}
