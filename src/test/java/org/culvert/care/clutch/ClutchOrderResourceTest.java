package org.culvert.care.clutch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Whatever is asked, in whatever order and at whatever time: eggs add up, and custody never overlaps. Seeded. */
@QuarkusTest
class ClutchOrderResourceTest {
    private static final Instant START = Instant.parse("2025-11-21T02:00:00Z");

    private final Random random = new Random(20261129);
    private final TreeMap<Integer, Integer> statuses = new TreeMap<>();
    private ClutchWorld turtles;

    @BeforeEach
    void makeWorld() {
        turtles = new ClutchWorld();
    }

    private Instant someTime() {
        return START.plus(Duration.ofHours(random.nextInt(600) - 60));
    }

    private String some(List<String> ids) {
        return ids.isEmpty() ? "01920000-0000-7000-8000-00000000dead" : ids.get(random.nextInt(ids.size()));
    }

    private void note(int status) {
        assertThat(status).isIn(200, 201, 400, 404, 409, 422);
        statuses.merge(status, 1, Integer::sum);
    }

    private int eggs(int most) {
        return random.nextInt(most + 1);
    }

    private void assertAddsUp(Json clutch) {
        assertThat(clutch.getInt("recovered"))
                .isEqualTo(clutch.getInt("setToIncubate") + clutch.getInt("broken") + clutch.getInt("discarded"));
        assertThat(clutch.getInt("setToIncubate"))
                .isEqualTo(clutch.getInt("hatched") + clutch.getInt("failed") + clutch.getInt("stillIncubating"));
        assertThat(clutch.getInt("stillIncubating")).isNotNegative();
    }

    @Test
    void eggsAlwaysAddUp() {
        for (int round = 0; round < 2; round++) {
            String clutch =
                    turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 1 + eggs(8), "surgery", START.toString());
            for (int step = 0; step < 25; step++) {
                Json now = Api.get(COORDINATOR, clutch);
                int set = eggs(3);
                int broken = eggs(1);
                int recovered = set + broken + (random.nextInt(6) == 0 ? 1 : 0);
                note(
                        switch (random.nextInt(6)) {
                            case 0 ->
                                Api.post(
                                                COORDINATOR,
                                                clutch + "/eggs",
                                                "{\"recovered\":%d,\"setToIncubate\":%d,\"broken\":%d,\"discarded\":0}"
                                                        .formatted(recovered, set, broken))
                                        .extract()
                                        .statusCode();
                            case 1 ->
                                Api.post(
                                                COORDINATOR,
                                                clutch + "/failed-eggs",
                                                "{\"failed\":%d,\"grounds\":\"mouldy\",\"saidBy\":\"A Carer\"}"
                                                        .formatted(1 + eggs(3)))
                                        .extract()
                                        .statusCode();
                            case 2 ->
                                Api.post(COORDINATOR, clutch + "/hatchings", "{\"hatched\":%d}".formatted(1 + eggs(2)))
                                        .extract()
                                        .statusCode();
                            case 3 ->
                                Api.change(
                                                COORDINATOR,
                                                clutch,
                                                "/entries/"
                                                        + some(
                                                                random.nextBoolean()
                                                                        ? now.getList("recoveries.id", String.class)
                                                                        : now.getList("failures.id", String.class))
                                                        + "/withdrawal",
                                                "{\"reason\":\"wrong\"}")
                                        .extract()
                                        .statusCode();
                            case 4 ->
                                Api.correct(
                                                COORDINATOR,
                                                clutch,
                                                "/eggs/" + some(now.getList("recoveries.id", String.class)),
                                                "{\"recovered\":%d,\"setToIncubate\":%d,\"broken\":%d,\"discarded\":0,\"reason\":\"x\"}"
                                                        .formatted(recovered, set, broken))
                                        .extract()
                                        .statusCode();
                            default ->
                                Api.correct(
                                                COORDINATOR,
                                                clutch,
                                                "/failed-eggs/" + some(now.getList("failures.id", String.class)),
                                                "{\"failed\":%d,\"reason\":\"x\"}".formatted(1 + eggs(4)))
                                        .extract()
                                        .statusCode();
                        });
                assertAddsUp(Api.get(COORDINATOR, clutch));
            }
        }
        assertThat(statuses.keySet()).contains(200, 201, 400, 409);
    }

    @Test
    void custodyNeverOverlaps() {
        List<String> holders =
                List.of(turtles.world.carer, turtles.world.incubatorKeeper, turtles.world.unlicensedCarer);
        for (int round = 0; round < 2; round++) {
            String clutch = turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 3, "surgery", START.toString());
            for (int step = 0; step < 25; step++) {
                Json now = Api.get(COORDINATOR, clutch);
                if (random.nextInt(3) > 0) {
                    note(Api.post(
                                    COORDINATOR,
                                    clutch + "/hand-overs",
                                    "{\"holder\":{\"memberId\":\"%s\"},\"at\":\"%s\"}"
                                            .formatted(some(holders), someTime()))
                            .extract()
                            .statusCode());
                } else {
                    note(Api.correct(
                                    COORDINATOR,
                                    clutch,
                                    "/custody-links/" + some(now.getList("custody.id", String.class)),
                                    "{\"from\":\"%s\",\"to\":%s,\"reason\":\"x\"}"
                                            .formatted(
                                                    someTime(),
                                                    random.nextBoolean() ? "null" : "\"" + someTime() + "\""))
                            .extract()
                            .statusCode());
                }
                assertNoOverlap(Api.get(COORDINATOR, clutch));
            }
        }
        assertThat(statuses.keySet()).contains(200, 201, 400, 409, 422);
    }

    private static void assertNoOverlap(Json clutch) {
        List<String> from = clutch.getList("custody.from", String.class);
        List<String> to = clutch.getList("custody.to", String.class);
        for (int i = 0; i < from.size(); i++) {
            Instant begins = Instant.parse(from.get(i));
            Instant ends = to.get(i) == null ? Instant.MAX : Instant.parse(to.get(i));
            assertThat(ends).isAfter(begins);
            if (i + 1 < from.size()) {
                assertThat(ends)
                        .as("link %d ends before the next begins", i)
                        .isBeforeOrEqualTo(Instant.parse(from.get(i + 1)));
            }
        }
    }

    /** Each of many at once gives an egg up or sees one hatch, of fewer eggs than that: as many succeed as there are eggs. */
    @Test
    void manyAtOnceCannotUseOneEggTwice() throws Exception {
        String clutch = turtles.clutch(turtles.mother(ClutchWorld.LONG_NECKED), 6, "surgery", START.toString());
        ExecutorService many = Executors.newFixedThreadPool(6);
        try {
            List<Callable<Integer>> acts = new ArrayList<>();
            for (int i = 0; i < 24; i++) {
                boolean fails = i % 2 == 0;
                acts.add(() -> {
                    int status;
                    do {
                        status = Api.post(
                                        COORDINATOR,
                                        clutch + (fails ? "/failed-eggs" : "/hatchings"),
                                        fails
                                                ? "{\"failed\":1,\"grounds\":\"mouldy\",\"saidBy\":\"A Carer\"}"
                                                : "{\"hatched\":1}")
                                .extract()
                                .statusCode();
                    } while (status == 412);
                    return status;
                });
            }
            List<Integer> told = new ArrayList<>();
            for (var act : many.invokeAll(acts)) {
                told.add(act.get());
            }
            assertThat(told).containsOnly(201, 409);
            assertThat(told.stream().filter(status -> status == 201)).hasSize(6);
        } finally {
            many.shutdownNow();
        }
        Json after = Api.get(COORDINATOR, clutch);
        assertAddsUp(after);
        assertThat(after.getInt("stillIncubating")).isZero();
    }
}
