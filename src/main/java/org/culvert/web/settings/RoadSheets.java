package org.culvert.web.settings;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.hotspot.effort.RoadSurveyService;
import org.culvert.road.RoadNetworkService;
import org.culvert.road.traffic.TrafficCountService;
import org.culvert.web.settings.Sheet.Purpose;

/** Roads, what drives on them, and who looked along them. */
@ApplicationScoped
class RoadSheets implements SheetSource {
    private final RoadNetworkService networks;
    private final TrafficCountService counts;
    private final RoadSurveyService surveys;

    RoadSheets(RoadNetworkService networks, TrafficCountService counts, RoadSurveyService surveys) {
        this.networks = networks;
        this.counts = counts;
        this.surveys = surveys;
    }

    @Override
    public List<Sheet> sheets() {
        return List.of(
                Sheet.of("road-networks", Purpose.roads, networks::listNetworks).titled("name", "number"),
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
}
