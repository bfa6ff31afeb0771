package org.culvert.exchange.demo;

import java.util.List;
import java.util.Locale;

/** What callers say, made up. */
final class Words {
    private static final List<String> STRUCK_ALIVE = List.of(
            "Just hit a %s, it is still moving at the side of the road.",
            "There is a %s on the verge, it lifts its head when cars go past.",
            "We have moved a %s off the road with a towel. It is bleeding a little.",
            "A %s was hit by the car in front of me. It has crawled into the grass.",
            "Found a %s sitting on the shoulder and it will not go away when I come near.");
    private static final List<String> STRUCK_DEAD = List.of(
            "Dead %s on the road, somebody should look for young.",
            "A %s has been run over, I think it is dead.",
            "Drove past a dead %s this morning, nobody has marked it.",
            "There is a %s lying on the white line, not moving at all.");
    private static final List<String> DOG =
            List.of("The dog had a %s in its mouth.", "Our neighbour's dog got hold of a %s.");
    private static final List<String> WIRE = List.of(
            "A %s is hanging on the barbed wire.", "A %s is caught in the netting over the fruit tree and fights it.");
    private static final List<String> ALONE = List.of(
            "A young %s has been alone under the tree since yesterday.",
            "The children found a small %s with no mother.");
    private static final List<String> OTHER = List.of(
            "There is a %s in the yard that does not look well.",
            "A %s has been in the same spot all day.", "A %s flew or fell against the window, I am not sure.");

    private Words() {}

    static String of(Dice dice, String cause, boolean dead, String vernacularName) {
        List<String> templates = switch (cause) {
            case CallMaker.COLLISION -> dead ? STRUCK_DEAD : STRUCK_ALIVE;
            case "attackByDog", "attackByCat" -> DOG;
            case "entanglement" -> WIRE;
            case "orphaned" -> ALONE;
            default -> OTHER;
        };
        String name = dice.chance(0.5) ? looseName(vernacularName) : vernacularName.toLowerCase(Locale.ROOT);
        return String.format(Locale.ROOT, dice.pick(templates), name).replaceAll("\\b([Aa]) (?=[aeiou])", "$1n ");
    }

    /** The last word of a name is mostly the kind of animal. */
    private static String looseName(String vernacularName) {
        String lower = vernacularName.toLowerCase(Locale.ROOT);
        return lower.substring(lower.lastIndexOf(' ') + 1);
    }
}
