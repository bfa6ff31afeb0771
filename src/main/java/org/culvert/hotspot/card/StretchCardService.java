package org.culvert.hotspot.card;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.culvert.geo.Position;
import org.culvert.hotspot.AuthoritySight;
import org.culvert.hotspot.CouncilAreas;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.OpenEvidence;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.card.StretchCard.Now;
import org.culvert.hotspot.when.CollisionSeasonService;
import org.culvert.hotspot.works.StretchAnswer;
import org.culvert.hotspot.works.StretchQuestion;
import org.culvert.hotspot.works.StretchQuestionService;
import org.culvert.hotspot.works.StretchWorksService;
import org.culvert.hotspot.works.ToldStretches;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.culvert.road.RoadService;
import org.jspecify.annotations.Nullable;

/** Gathers what is known of a hotspot. */
@ApplicationScoped
public class StretchCardService {
    private static final int USUAL_YEARS = 5;
    private static final String SENSITIVE =
            "A species of this group is sensitive: what happened on the stretch is not told to"
                    + " you. Who keeps the network's records can be asked.";
    private static final String TO_EVERYBODY =
            "What the records say of the stretch, by year, month, hour and kind of animal, is"
                    + " told to roads authorities and those who keep the records.";
    private static final String NO_ROADS = "No roads are imported now on which the stretch could be looked up.";

    private final OpenEvidence evidence;
    private final StretchQuestionService questions;
    private final CollisionSeasonService seasons;
    private final StretchWorksService works;
    private final ToldStretches stretches;
    private final AuthoritySight authority;
    private final CouncilAreas councils;
    private final RoadService roads;
    private final RegionService region;
    private final Clock clock;

    StretchCardService(
            OpenEvidence evidence,
            StretchQuestionService questions,
            CollisionSeasonService seasons,
            StretchWorksService works,
            ToldStretches stretches,
            AuthoritySight authority,
            CouncilAreas councils,
            RoadService roads,
            RegionService region,
            Clock clock) {
        this.evidence = evidence;
        this.questions = questions;
        this.seasons = seasons;
        this.works = works;
        this.stretches = stretches;
        this.authority = authority;
        this.councils = councils;
        this.roads = roads;
        this.region = region;
        this.clock = clock;
    }

    /** @param stretch of a report that the asker has been given */
    public StretchCard card(HotspotReport report, HotspotReport.Stretch stretch) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        if (authority.withholdsPlacesOf(report.settings().taxonGroup())) {
            return new StretchCard(stretch, List.of(), List.of(), null, SENSITIVE);
        }
        List<String> areas = councils(stretch);
        List<StretchCard.Crossing> crossings = current == null
                ? List.of()
                : Crossings.of(
                        current.network(), stretch.road(), stretch.fromChainageMetres(), stretch.toChainageMetres());
        if (!evidence.isOwn()) {
            return new StretchCard(stretch, areas, crossings, null, TO_EVERYBODY);
        }
        if (current == null) {
            return new StretchCard(stretch, areas, crossings, null, NO_ROADS);
        }
        try {
            return new StretchCard(stretch, areas, crossings, now(report.settings(), stretch), null);
        } catch (InvalidException | ConflictException otherRoadsNow) {
            return new StretchCard(stretch, areas, crossings, null, otherRoadsNow.getMessage());
        }
    }

    private List<String> councils(HotspotReport.Stretch stretch) {
        if (stretch.lines().isEmpty()) {
            return List.of();
        }
        double[][] line = stretch.lines().get(stretch.lines().size() / 2);
        double[] middle = line[line.length / 2];
        return councils.open(clock.instant().atZone(region.zone()).toLocalDate())
                .at(new Position(middle[1], middle[0]));
    }

    private Now now(RunSettings settings, HotspotReport.Stretch stretch) {
        ToldStretches.Told told =
                stretches.around(stretch.road(), stretch.fromChainageMetres(), stretch.toChainageMetres());
        Years years = years(settings);
        RunSettings.Season season = settings.season();
        boolean wholeYear = season.window() == null && season.months().size() == 12;
        StretchAnswer allYear = questions.answer(question(settings, told, years, null, null));
        StretchAnswer answer = wholeYear
                ? allYear
                : questions.answer(question(
                        settings, told, years, season.window() == null ? season.months() : null, season.window()));
        return new Now(
                told.from(),
                told.to(),
                answer,
                allYear,
                seasons.tellOfStretch(
                                settings.taxonGroup(),
                                stretch.road(),
                                told.from(),
                                told.to(),
                                years.first(),
                                years.last())
                        .orElse(null),
                works.tell(stretch.road(), told.from(), told.to(), settings.taxonGroup()));
    }

    private record Years(int first, int last) {}

    /** Calendar years that lie wholly in the period and are over; where there is none, the last that are over. */
    private Years years(RunSettings settings) {
        int over = clock.instant().atZone(region.zone()).getYear() - 1;
        LocalDate from = settings.periodFrom();
        LocalDate to = settings.periodTo();
        int first = from.getDayOfYear() == 1 ? from.getYear() : from.getYear() + 1;
        int last = Math.min(over, to.plusDays(1).getDayOfYear() == 1 ? to.getYear() : to.getYear() - 1);
        return first > last
                ? new Years(over - USUAL_YEARS + 1, over)
                : new Years(Math.max(first, last - StretchQuestionService.MOST_YEARS + 1), last);
    }

    private static StretchQuestion question(
            RunSettings settings,
            ToldStretches.Told told,
            Years years,
            @Nullable List<Integer> months,
            @Nullable String window) {
        return new StretchQuestion(
                told.road(),
                told.from(),
                told.to(),
                years.first(),
                years.last(),
                settings.taxonGroup(),
                months,
                window,
                false,
                null,
                null,
                null,
                null);
    }

    /** The hotspot of a rank, where the report has it for the asker. */
    public static Optional<HotspotReport.Stretch> find(HotspotReport report, int rank) {
        return report.hotspots().stream()
                .filter(stretch -> stretch.rank() == rank)
                .findFirst();
    }
}
