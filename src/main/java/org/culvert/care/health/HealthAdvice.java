package org.culvert.care.health;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What to do now, with who says so. No dose and no treatment: that is the health unit's.
 *
 * @param source who says so, or that nobody was read who does
 */
public record HealthAdvice(String sentence, String source) {
    private static final String NO_SOURCE = "Common practice, no source.";

    private static final HealthAdvice WASH = new HealthAdvice(
            "Wash the place at once and thoroughly with soap and water: sources say for at least 5 or for at least 15"
                    + " minutes. Go on washing while somebody else rings.",
            "5 minutes: NSW Health, media release of 22 October 2014; 15 minutes: Queensland Health, page on Australian bat"
                    + " lyssavirus. Excerpts were read, November 2026.");

    private static final HealthAdvice RING = new HealthAdvice(
            "Ring the public health unit now, even if vaccinated, and do what they say: they decide what follows.",
            "Queensland Health, page on Australian bat lyssavirus: recommended for anyone who may have been exposed, vaccinated"
                    + " or not. Excerpts were read, November 2026.");

    private static final HealthAdvice HELD = new HealthAdvice(
            "The animal is held for the health authority: it is neither released nor disposed of until cleared.",
            NO_SOURCE + " A biter is quarantined: DCMR 19-1567 (District of Columbia).");

    private static final HealthAdvice NAME_IT = new HealthAdvice(
            "No animal is named, so none is held: keep it where it is, alive or dead, and name its case here as soon as it"
                    + " has one.",
            NO_SOURCE);

    private static final HealthAdvice LEFT = new HealthAdvice(
            "The case of that animal has ended: tell the public health unit where it, or its body, went.", NO_SOURCE);

    private static final HealthAdvice NEEDLE = new HealthAdvice(
            "Wash the place at once with soap and water, keep the needle and what was in it for whoever treats you, and ring"
                    + " a doctor and the public health unit now.",
            NO_SOURCE);

    private static final HealthAdvice NEEDLE_ELSEWHERE = new HealthAdvice(
            "The needle is said not to have been in this animal, so it is not held for it. Where that turns out otherwise,"
                    + " correct it here.",
            NO_SOURCE);

    private static final HealthAdvice VENOM =
            new HealthAdvice("Ring the emergency number first, keep still, and do as they say.", NO_SOURCE);

    private static final HealthAdvice VENOM_HOLDS_NOTHING = new HealthAdvice(
            "Venom is no question of lyssavirus, and no hold is set for it. Where a bat or another mammal bit or scratched as"
                    + " well, enter that too.",
            NO_SOURCE);

    private static final HealthAdvice NO_HOTLINE = new HealthAdvice(
            "No hotline is on record here: ring the emergency animal disease hotline of your state now, and enter its number"
                    + " with its source for the next time.",
            NO_SOURCE);

    private static final HealthAdvice STAYS = new HealthAdvice(
            "One suspicion is enough. The animal is neither handed on nor released nor disposed of until the authority clears"
                    + " it. Keep it apart, keep people away, and check your local code and your licensed vet.",
            NO_SOURCE);

    /** Of an exposure, the most pressing first. */
    static List<HealthAdvice> afterAnExposure(Exposure row, boolean caseEnded) {
        List<HealthAdvice> advice = new ArrayList<>();
        switch (row.kind()) {
            case venom -> advice.addAll(List.of(VENOM, VENOM_HOLDS_NOTHING));
            case needle -> advice.add(NEEDLE);
            case bite, scratch, lick, other -> advice.addAll(List.of(WASH, RING));
        }
        if (row.holdsTheAnimal()) {
            advice.add(row.caseId == null ? NAME_IT : HELD);
        } else if (row.kind() == ExposureEntries.ExposureKind.needle) {
            advice.add(NEEDLE_ELSEWHERE);
        }
        if (caseEnded) {
            advice.add(LEFT);
        }
        return List.copyOf(advice);
    }

    /** Of a suspicion: whom to ring comes first. */
    static List<HealthAdvice> afterASuspicion(NotifiableCondition condition) {
        String number = condition.hotlineNumber;
        HealthAdvice hotline = number == null
                ? NO_HOTLINE
                : new HealthAdvice(
                        String.format(Locale.ROOT, "Ring %s now: %s.", condition.hotlineName, number),
                        condition.hotlineSource + ", read on " + condition.hotlineReadOn);
        return List.of(hotline, STAYS);
    }
}
