package org.culvert.care.incubation;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is published of temperature and the sex of the young. It is shown, and claims nothing of these eggs.
 *
 * @param madeBy what makes the sex
 * @param advice null where temperature does not make it, or where nobody knows
 * @param why why there is advice, or none
 */
public record SexAdvisory(MadeBy madeBy, @Nullable String advice, String why, List<String> sources) {
    public enum MadeBy {
        temperature,
        genes,
        unknown
    }

    /** @param madeBy never unknown */
    public record Fact(MadeBy madeBy, String words, String source) {}

    public static SexAdvisory of(String scientificName, List<Fact> facts) {
        List<Fact> byTemperature = facts.stream()
                .filter(fact -> fact.madeBy() == MadeBy.temperature)
                .toList();
        if (!byTemperature.isEmpty()) {
            return new SexAdvisory(
                    MadeBy.temperature,
                    String.join(" ", byTemperature.stream().map(Fact::words).toList())
                            + " This is what was found in other eggs. It does not tell the sex of these: somebody who looks at"
                            + " the grown animals does.",
                    "In this species temperature makes the sex.",
                    byTemperature.stream().map(Fact::source).distinct().toList());
        }
        if (facts.isEmpty()) {
            return new SexAdvisory(
                    MadeBy.unknown,
                    null,
                    "Whether temperature makes the sex of " + scientificName + " is not entered here.",
                    List.of());
        }
        return new SexAdvisory(
                MadeBy.genes,
                null,
                String.join(" ", facts.stream().map(Fact::words).distinct().toList()),
                facts.stream().map(Fact::source).distinct().toList());
    }
}
