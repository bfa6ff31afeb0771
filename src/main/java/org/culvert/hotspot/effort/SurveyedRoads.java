package org.culvert.hotspot.effort;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.culvert.hotspot.SurveyedGround;
import org.culvert.hotspot.stats.RoadSpan;
import org.culvert.hotspot.works.RoadPieces;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.CurrentRoads;
import org.jspecify.annotations.Nullable;

/** The surveys that stand, as stretches of the current roads. */
@ApplicationScoped
class SurveyedRoads implements SurveyedGround {
    private final RoadSurveyService surveys;
    private final RegionService regions;

    SurveyedRoads(RoadSurveyService surveys, RegionService regions) {
        this.surveys = surveys;
        this.regions = regions;
    }

    @Override
    public Surveys find(LocalDate from, LocalDate to, @Nullable String taxonGroup, CurrentRoads roads) {
        ZoneId zone = regions.zone();
        RoadPieces pieces = RoadPieces.of(roads.network());
        return new Surveys(
                surveys
                        .listStanding(
                                from.atStartOfDay(zone).toInstant(),
                                to.plusDays(1).atStartOfDay(zone).toInstant())
                        .stream()
                        .filter(survey -> survey.looksFor(taxonGroup))
                        .map(survey -> new Survey(
                                survey.startedAt().atZone(zone).toLocalDate(),
                                survey.endedAt.atZone(zone).toLocalDate(),
                                spans(survey, pieces)))
                        .toList());
    }

    private static List<RoadSpan> spans(RoadSurvey survey, RoadPieces pieces) {
        try {
            return pieces.requireStretch("", survey.road, survey.fromChainageMetres, survey.toChainageMetres).stream()
                    .flatMap(part -> pieces.spans(part).stream())
                    .toList();
        } catch (InvalidException noLongerThere) {
            // The report says how many
            return List.of();
        }
    }
}
