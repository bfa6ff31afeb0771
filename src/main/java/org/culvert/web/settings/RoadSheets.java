package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.call.PlaceMoveService;
import org.culvert.hotspot.AnnualRunEntry;
import org.culvert.hotspot.AnnualRunService;
import org.culvert.hotspot.effort.RoadSurveyService;
import org.culvert.platform.NotFoundException;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.RoadNetworkView;
import org.culvert.road.traffic.TrafficCountService;
import org.culvert.web.acts.Act;
import org.culvert.web.settings.Sheet.Purpose;
import org.jspecify.annotations.Nullable;

/** Roads, what drives on them, and who looked along them. */
@ApplicationScoped
class RoadSheets implements SheetSource {
    /**
     * A year asked for group by group.
     *
     * @param taxonGroups none: all animals at once
     */
    record YearAsked(
            @NotNull LocalDate periodFrom,
            @NotNull LocalDate periodTo,
            @NotBlank @Size(max = 1000) String plan,
            @NotNull List<String> taxonGroups,
            @Nullable @DecimalMin("20") @DecimalMax("5000") Double reachMetres,
            @Nullable @DecimalMin("10") @DecimalMax("2500") Double sigmaMetres,

            @Nullable @DecimalMin("0.0001") @DecimalMax("0.5")
            Double alpha) {
        AnnualRunEntry asked() {
            List<AnnualRunEntry.Cell> cells = new ArrayList<>();
            taxonGroups.forEach(group -> cells.add(new AnnualRunEntry.Cell(group, null, null)));
            if (cells.isEmpty()) {
                cells.add(new AnnualRunEntry.Cell(null, null, null));
            }
            return new AnnualRunEntry(periodFrom, periodTo, plan, cells, reachMetres, sigmaMetres, null, alpha);
        }
    }

    private final RoadNetworkService networks;
    private final TrafficCountService counts;
    private final RoadSurveyService surveys;
    private final PlaceMoveService moves;
    private final AnnualRunService runs;

    RoadSheets(
            RoadNetworkService networks,
            TrafficCountService counts,
            RoadSurveyService surveys,
            PlaceMoveService moves,
            AnnualRunService runs) {
        this.networks = networks;
        this.counts = counts;
        this.surveys = surveys;
        this.moves = moves;
        this.runs = runs;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("road-networks", Purpose.roads, networks::listNetworks)
                        .titled("name", "number")
                        .one(this::network)
                        .act(
                                new Act<>(
                                        "place-moves",
                                        "POST /api/road-networks/{id}/place-moves",
                                        null,
                                        true,
                                        NetworkSheets.Nothing.class,
                                        Set.of()),
                                (id, nothing) -> moves.start(id)),
                Sheet.paged("annual-runs", Purpose.roads, most -> runs.listAnnualRuns(most, null))
                        .titled("plan")
                        .entered(
                                YearAsked.class,
                                year -> runs.declare(year.asked()).id()),
                Sheet.paged(
                                "traffic-counts",
                                Purpose.roads,
                                most -> counts.listCounts(null, null, null, null, null, most, null))
                        .titled("road", "station", "year")
                        .one(counts::getCount)
                        .entered(
                                TrafficCountService.TrafficCountEntry.class,
                                entry -> counts.enter(entry).id(),
                                "place.decimalDegrees",
                                "place.degreesMinutesSeconds",
                                "place.grid",
                                "place.plusCode",
                                "place.crossingRoads",
                                "place.roadName",
                                "place.direction")
                        .corrected(
                                "traffic-count",
                                TrafficCountService.TrafficCountCorrection.class,
                                counts::correct,
                                "place")
                        .changed(
                                "withdrawal",
                                "traffic-count",
                                TrafficCountService.TrafficCountWithdrawal.class,
                                (id, why) -> counts.withdraw(id, why.reason())),
                Sheet.paged("road-surveys", Purpose.roads, most -> surveys.listSurveys(null, null, null, most, null))
                        .titled("road", "startedAt")
                        .ofThingsDone()
                        .one(surveys::getSurvey)
                        .entered(
                                RoadSurveyService.RoadSurveyEntry.class,
                                entry -> surveys.enter(entry).id())
                        .corrected("road-survey", RoadSurveyService.RoadSurveyCorrection.class, surveys::correct)
                        .changed(
                                "withdrawal",
                                "road-survey",
                                RoadSurveyService.RoadSurveyWithdrawal.class,
                                (id, why) -> surveys.withdraw(id, why.reason())));
    }

    private RoadNetworkView network(UUID id) {
        return networks.listNetworks().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("road network", id));
    }
}
