package org.culvert.exchange.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.Objects;
import org.culvert.hotspot.works.WorksKind;
import org.culvert.hotspot.works.WorksService;
import org.jspecify.annotations.Nullable;

/**
 * Invented works on three of the planted stretches: a fence with a crossing after which nothing more is planted, and two beside
 * which what is planted goes on, so that before and after say what such a comparison says of works that did little.
 */
@ApplicationScoped
class WorksLoader {
    private static final double STEP_METRES = 100;
    private static final double ENDS_METRES = 200;

    private final WorksService works;

    WorksLoader(WorksService works) {
        this.works = works;
    }

    void load(DemoRegion region) {
        int last = region.settings().sixYearsEnd().getYear();
        fence(plant(region, "H16"));
        enter(
                plant(region, "H03"),
                WorksKind.reflectors,
                "Reflectors on the posts of both sides. Invented for the demo region.",
                LocalDate.of(last - 4, 8, 1),
                LocalDate.of(last - 4, 8, 5),
                "The regional paper told of the turtles when the reflectors were put up.");
        enter(
                plant(region, "H02"),
                WorksKind.signs,
                "Two signs with lights that flash from October to January. Invented for the demo region.",
                LocalDate.of(last - 3, 7, 3),
                LocalDate.of(last - 3, 7, 14),
                null);
    }

    private void fence(Plant plant) {
        LocalDate until = Objects.requireNonNull(plant.spec().until(), "what is planted there goes on");
        enter(
                plant,
                WorksKind.fenceAndCrossing,
                "A fence along both sides, down into the ground, and a culvert under the road. Invented for the demo region.",
                until.plusDays(1),
                until.plusDays(30),
                null);
    }

    private static Plant plant(DemoRegion region, String id) {
        return region.plants().stream()
                .filter(plant -> plant.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("nothing is planted as " + id));
    }

    private void enter(
            Plant plant,
            WorksKind kind,
            String words,
            LocalDate builtFrom,
            LocalDate builtUntil,
            @Nullable String publicityChange) {
        Road road = plant.roads().get(0);
        works.enter(new WorksService.WorksEntry(
                kind,
                words,
                road.name(),
                Math.max(road.startMeasure(), Math.floor(plant.fromMetres() / STEP_METRES) * STEP_METRES),
                Math.min(road.endMeasure(), Math.ceil(plant.toMetres() / STEP_METRES) * STEP_METRES),
                ENDS_METRES,
                builtFrom,
                builtUntil,
                null,
                null,
                publicityChange));
    }
}
