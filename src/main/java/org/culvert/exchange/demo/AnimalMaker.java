package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The animals of a call: kind, life, age and sex as said, and young where the season has them. */
final class AnimalMaker {
    private final Map<String, List<Settings.Taxon>> byGroup = new HashMap<>();

    AnimalMaker(Settings settings) {
        settings.taxa()
                .forEach(taxon -> byGroup.computeIfAbsent(taxon.group(), key -> new ArrayList<>())
                        .add(taxon));
    }

    Settings.Taxon taxon(Dice dice, Settings.Group group) {
        List<Settings.Taxon> taxa = byGroup.getOrDefault(group.name(), List.of());
        return taxa.get(
                dice.weighted(taxa.stream().mapToDouble(Settings.Taxon::weight).toArray()));
    }

    Incident.Animal unsure(Settings.Taxon taxon, String vitality) {
        return new Incident.Animal(taxon.scientificName(), "unverified", 1, vitality, "unknown", "unknown", 0);
    }

    List<Incident.Animal> animals(
            Dice dice, Settings.Group group, Settings.Taxon taxon, String cause, boolean dead, int month) {
        boolean orphan = cause.equals("orphaned") || cause.equals("unsuitablePlace");
        boolean young = orphan || dice.chance(0.12);
        boolean spring = month >= 8 && month <= 12;
        boolean carries = !young && dice.chance(group.youngShare() * (spring ? 2 : 0.8));
        boolean nesting = group.activity().equals("nesting") && (month >= 10 || month == 1);
        String sex = carries || nesting && dice.chance(0.6)
                ? "female"
                : dice.chance(0.2) ? dice.pick(List.of("female", "male")) : "unknown";
        String checked =
                dice.chance(0.45) ? dice.pick(List.of("seenByMember", "seenByMember", "fromPhotograph")) : "unverified";
        boolean twoAlike = !carries && dice.chance(0.012);
        List<Incident.Animal> animals = new ArrayList<>();
        animals.add(new Incident.Animal(
                taxon.scientificName(),
                checked,
                twoAlike ? 2 : 1,
                dead ? "dead" : dice.chance(0.05) ? "unknown" : "alive",
                young ? "juvenile" : dice.chance(0.6) ? "adult" : "unknown",
                sex,
                0));
        if (carries) {
            int howMany = group.name().equals("possums-and-gliders") && dice.chance(0.3) ? 2 : 1;
            for (int i = 0; i < howMany; i++) {
                animals.add(new Incident.Animal(
                        taxon.scientificName(),
                        checked,
                        1,
                        dice.chance(0.8) ? "alive" : "dead",
                        "juvenile",
                        "unknown",
                        1));
            }
        }
        return List.copyOf(animals);
    }
}
