package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.hotspot.effort.RoadSurveyService;
import org.culvert.hotspot.effort.Travel;
import org.culvert.roster.RosterService;

/**
 * Invented surveys of the last whole nesting season, on the roads where turtles were planted: every other road twice a week
 * or so, the others once a fortnight. So a run by surveys has effort that differs to take account of.
 */
@ApplicationScoped
class SurveyLoader {
    private static final String GROUP = "turtles";
    private static final int DAYS = 123;
    private static final int OFTEN_EVERY_DAYS = 4;
    private static final int SELDOM_EVERY_DAYS = 14;
    private static final double BEYOND_METRES = 2000;
    private static final double SPEED_KMH = 40;
    private static final int OBSERVERS = 2;
    private static final int FIRST_HOUR = 6;

    private final RoadSurveyService surveys;
    private final RosterService roster;
    private final Clock clock;

    SurveyLoader(RoadSurveyService surveys, RosterService roster, Clock clock) {
        this.surveys = surveys;
        this.roster = roster;
        this.clock = clock;
    }

    void load(DemoRegion region) {
        UUID network = roster.listOrganisations("network").get(0).id();
        LocalDate first = LocalDate.of(region.settings().sixYearsEnd().getYear() - 1, 10, 1);
        List<Plant> plants = region.plants().stream()
                .filter(plant -> plant.hot() && plant.spec().taxonGroup().equals(GROUP))
                .filter(plant -> plant.roads().get(0).measured())
                .toList();
        for (int i = 0; i < plants.size(); i++) {
            Plant plant = plants.get(i);
            Road road = plant.roads().get(0);
            double from = Math.ceil(Math.max(road.startMeasure(), plant.fromMetres() - BEYOND_METRES));
            double to = Math.floor(Math.min(road.endMeasure(), plant.toMetres() + BEYOND_METRES));
            Duration drive = Duration.ofSeconds(Math.round((to - from) / (SPEED_KMH / 3.6)));
            int every = i % 2 == 0 ? OFTEN_EVERY_DAYS : SELDOM_EVERY_DAYS;
            for (int day = i; day < DAYS; day += every) {
                Instant began = first.plusDays(day)
                        .atTime(FIRST_HOUR + i, 0)
                        .atZone(region.settings().zone())
                        .toInstant();
                if (began.plus(drive).isBefore(clock.instant())) {
                    surveys.enter(new RoadSurveyService.RoadSurveyEntry(
                            network,
                            road.name(),
                            from,
                            to,
                            began,
                            began.plus(drive),
                            Travel.motorVehicle,
                            SPEED_KMH,
                            OBSERVERS,
                            List.of(GROUP),
                            "Invented for the demo region."));
                }
            }
        }
    }
}
