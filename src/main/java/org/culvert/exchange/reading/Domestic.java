package org.culvert.exchange.reading;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Words for animals that people keep: such rows are kept apart, and are no evidence of wildlife. Common practice, no source.
 *
 * <p>All words of a cell must be among them. A cat in a caterpillar is none, nor is a wild dog, a bush pig, a sea horse or a cane
 * toad; words that are wild animals too (goose, rabbit, turkey, calf; {@code chat}, which is a cat and a bird) are left for
 * somebody to decide.
 */
final class Domestic {
    private static final Set<String> ANIMALS = words(
            // English
            "dog puppy pup doggie canine cat kitten feline kitty cattle cow cows bull steer heifer bullock horse pony mare stallion"
                    + " gelding donkey mule sheep lamb ewe ram goat pig piglet sow alpaca llama chicken hen rooster chook",
            // German
            "hund hunde hündin welpe katze katzen kater kätzchen rind rinder kuh kühe kalb bulle pferd pferde schaf schafe lamm"
                    + " lämmer ziege ziegen schwein schweine esel huhn hühner hahn hauskatze haushund hausschwein",
            // French
            "chien chiens chienne chiot chatte chaton vache vaches taureau bovin bovins cheval chevaux jument poney mouton moutons"
                    + " brebis agneau chèvre chèvres cochon cochons porc porcs poule poules",
            // Spanish and Portuguese
            "perro perros perra cachorro cachorros cão cães gato gatos gata vaca vacas toro bovino ganado gado caballo caballos cavalo"
                    + " cavalos yegua oveja ovejas ovelha ovelhas cordero cabra cabras cerdo cerdos porco porcos burro burros"
                    + " gallina gallinas galinha",
            // Italian, Dutch, Swedish, Polish
            "cani gatto gatti mucca mucche cavallo cavalli pecora pecore maiale maiali hond honden kat katten koe koeien paard"
                    + " paarden schaap schapen geit geiten varken varkens katt katter häst hästar får svin pies kot krowa koń"
                    + " owca koza świnia");

    /** Said beside them. A feral or a wild one is another matter. */
    private static final Set<String> BESIDE = words(
            "domestic",
            "domesticated",
            "domestique",
            "doméstico",
            "doméstica",
            "domestico",
            "house",
            "pet",
            "farm",
            "dairy",
            "beef",
            "stray",
            "lost",
            "owned",
            "family",
            "a",
            "the",
            "adult",
            "young",
            "juvenile",
            "male",
            "female",
            "dead",
            "injured",
            "large",
            "small",
            "black",
            "white",
            "brown",
            "ginger",
            "tabby",
            "haus",
            "small",
            "breed",
            "cross");

    private static final Set<String> NAMES = Set.of(
            "canis familiaris",
            "canis lupus familiaris",
            "felis catus",
            "felis silvestris catus",
            "bos taurus",
            "bos indicus",
            "equus caballus",
            "equus ferus caballus",
            "equus asinus",
            "ovis aries",
            "capra hircus",
            "capra aegagrus hircus",
            "sus domesticus",
            "sus scrofa domesticus",
            "gallus gallus domesticus",
            "vicugna pacos",
            "lama glama");

    private static final Pattern NO_WORD = Pattern.compile("[^\\p{L}]+");

    private Domestic() {}

    /** Whether words name an animal that people keep, and nothing else. */
    static boolean isNamedBy(String cell) {
        List<String> words = Arrays.stream(NO_WORD.split(cell.toLowerCase(Locale.ROOT)))
                .filter(word -> !word.isEmpty())
                .toList();
        if (words.isEmpty()) {
            return false;
        }
        if (NAMES.contains(String.join(" ", words))) {
            return true;
        }
        boolean any = false;
        for (String word : words) {
            if (isAnimal(word)) {
                any = true;
            } else if (!BESIDE.contains(word)) {
                return false;
            }
        }
        return any;
    }

    private static boolean isAnimal(String word) {
        return ANIMALS.contains(word)
                || word.length() > 3 && word.endsWith("s") && ANIMALS.contains(word.substring(0, word.length() - 1))
                || word.equals("puppies")
                || word.equals("kitties")
                || word.equals("ponies");
    }

    private static Set<String> words(String... lines) {
        return Set.copyOf(Arrays.stream(lines)
                .flatMap(line -> Arrays.stream(line.split(" ")))
                .toList());
    }
}
