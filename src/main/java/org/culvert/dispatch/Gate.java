package org.culvert.dispatch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.culvert.geo.Light;
import org.culvert.geo.Position;
import org.culvert.geo.Sun;
import org.jspecify.annotations.Nullable;

/** Holds the facts of one going-out against the rules. What is unknown counts as dangerous. */
final class Gate {
    /**
     * The facts.
     *
     * @param position where, or null when no place is known yet
     * @param speedLimitKmh posted limit of the road, or null where it is not known or no road is
     * @param people how many go
     * @param policeReference reference of the police or the roads authority's line, when they have been asked
     * @param groupKnown whether anybody has said what kind of animal it is
     * @param vaccinationsNeeded what handlers of the told kinds must be vaccinated against
     * @param notShownVaccinated call signs of those who go and are not shown to be vaccinated against one of these
     * @param anyoneHurt whether a caller said, or did not rule out, that people are hurt
     */
    record Facts(
            Instant at,
            @Nullable Position position,
            @Nullable Double speedLimitKmh,
            int people,
            @Nullable String policeReference,
            boolean groupKnown,
            List<String> vaccinationsNeeded,
            List<String> notShownVaccinated,
            boolean anyoneHurt) {}

    /**
     * The figures and words of the network's rules; an absent rule is not tested.
     *
     * @param highSpeedKmh a road at or above this is a fast one
     */
    record Rules(Optional<Double> highSpeedKmh, Optional<String> fastRoadWords, Optional<String> darkWords) {}

    private Gate() {}

    static List<GateTest> test(Facts facts, Rules rules) {
        List<GateTest> tests = new ArrayList<>();
        tests.add(people(facts));
        rules.highSpeedKmh()
                .ifPresent(limit ->
                        tests.add(speed(facts, limit, rules.fastRoadWords().orElse(""))));
        rules.darkWords().ifPresent(words -> tests.add(light(facts, words)));
        tests.add(vaccination(facts));
        return tests;
    }

    private static GateTest people(Facts facts) {
        return new GateTest(
                "people",
                GateTest.ADVICE,
                facts.anyoneHurt() ? "fail" : "pass",
                facts.anyoneHurt() ? "people may be hurt" : "nobody is hurt",
                facts.anyoneHurt() ? "The emergency number comes first; the animal waits." : "");
    }

    private static GateTest speed(Facts facts, double highSpeedKmh, String words) {
        Double limit = facts.speedLimitKmh();
        String figures = limit == null
                ? "speed limit not known, counts as high"
                : String.format(Locale.ROOT, "limit %.0f km/h against %.0f km/h", limit, highSpeedKmh);
        boolean fast = limit == null || limit >= highSpeedKmh;
        boolean asked =
                facts.policeReference() != null && !facts.policeReference().isBlank();
        boolean pass = !fast || (asked && facts.people() >= 2);
        figures +=
                String.format(Locale.ROOT, "; %d going; police reference %s", facts.people(), asked ? "given" : "none");
        return new GateTest("speed", GateTest.POLICY, pass ? "pass" : "fail", figures, fast ? words : "");
    }

    private static GateTest light(Facts facts, String words) {
        if (facts.position() == null) {
            boolean pass = facts.people() >= 2;
            return new GateTest(
                    "light",
                    GateTest.POLICY,
                    pass ? "pass" : "cantTell",
                    "no place, so the light there is not known; " + facts.people() + " going",
                    words);
        }
        double elevation = Sun.elevationDegrees(facts.at(), facts.position());
        Light light = Light.of(elevation);
        boolean pass = light == Light.DAY || facts.people() >= 2;
        return new GateTest(
                "light",
                GateTest.POLICY,
                pass ? "pass" : "fail",
                String.format(
                        Locale.ROOT,
                        "sun %.1f degrees %s the horizon (%s); %d going",
                        Math.abs(elevation),
                        elevation < 0 ? "below" : "above",
                        light.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        facts.people()),
                light == Light.DAY ? "" : words);
    }

    private static GateTest vaccination(Facts facts) {
        if (!facts.groupKnown()) {
            return new GateTest(
                    "vaccination",
                    GateTest.ADVICE,
                    "cantTell",
                    "nobody has said what kind of animal it is",
                    "If it turns out to be a bat, only vaccinated people touch it.");
        }
        if (facts.vaccinationsNeeded().isEmpty()) {
            return new GateTest("vaccination", GateTest.PROTECTION, "pass", "none is needed for what was told", "");
        }
        boolean pass = facts.notShownVaccinated().isEmpty();
        return new GateTest(
                "vaccination",
                GateTest.PROTECTION,
                pass ? "pass" : "fail",
                "needed: " + String.join(", ", facts.vaccinationsNeeded()) + "; not shown to be vaccinated: "
                        + (pass ? "nobody who goes" : String.join(", ", facts.notShownVaccinated())),
                pass ? "" : "Only vaccinated people are sent, and nobody overrides that.");
    }
}
