package org.culvert.exchange.demo;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Names that nobody bears: put together from syllables, each used once. */
final class Names {
    private static final List<String> STARTS = List.of(
            "Abber", "Brask", "Corvel", "Dunth", "Eskam", "Farrel", "Gellin", "Hurst", "Ildra", "Jarrim", "Kelmar",
            "Lorrin", "Mardel", "Neptar", "Ombel", "Pellan", "Quinter", "Ruskel", "Sorrel", "Tarlin", "Ulvar", "Varrin",
            "Wendar", "Yellim", "Zeller", "Thessal", "Brindle", "Cassow", "Drummel", "Ferrin", "Grannel", "Hollim",
            "Imber", "Jessel", "Kirram", "Lathim", "Morrel", "Noddim", "Orrim", "Prattel");
    private static final List<String> ENDS = List.of(
            "dook", "wick", "sley", "mere", "gan", "boro", "thorpe", "unda", "ooma", "stead", "bight", "comb", "dell",
            "fen", "garth", "holt", "issock", "kell", "lund", "mook", "ness", "ova", "pell", "ridden", "sund");
    private static final List<String> GIVEN = List.of(
            "Ada", "Amir", "Anna", "Ben", "Bridget", "Caleb", "Chloe", "Daniel", "Dot", "Elena", "Farid", "Fiona",
            "George", "Grace", "Hana", "Harry", "Imogen", "Isaac", "Jana", "Joel", "Kai", "Kate", "Leila", "Liam",
            "Mai", "Marcus", "Nadia", "Noah", "Olive", "Oscar", "Priya", "Paul", "Rosa", "Ravi", "Sally", "Sam", "Tara",
            "Tom", "Una", "Vera", "Will", "Yusuf", "Zoe", "Ines");

    private final Dice dice;
    private final Set<String> used = new HashSet<>();

    Names(Dice dice) {
        this.dice = dice;
    }

    String place() {
        while (true) {
            String name = dice.pick(STARTS) + dice.pick(ENDS);
            if (used.add(name)) {
                return name;
            }
        }
    }

    String road(RoadClass kind) {
        String suffix = switch (kind) {
            case MOTORWAY -> "Motorway";
            case MOTORWAY_LINK -> "Ramp";
            case PRIMARY -> "Highway";
            case SECONDARY, TERTIARY -> "Road";
            case UNCLASSIFIED -> "Lane";
            case RESIDENTIAL -> dice.pick(List.of("Street", "Street", "Street", "Avenue", "Parade", "Close"));
            case TRACK -> "Track";
        };
        return place() + ' ' + suffix;
    }

    /** A person's given name and surname; surnames may come again, pairs hardly ever. */
    static String[] person(Dice dice) {
        return new String[] {dice.pick(GIVEN), dice.pick(STARTS) + dice.pick(ENDS)};
    }
}
