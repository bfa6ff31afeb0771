package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The people who ring: many once, a few often. Their numbers are of the blocks kept free for films and books. */
final class Callers {
    private static final int HOW_MANY = 5_000;

    private final List<Caller> callers = new ArrayList<>();

    /** A name is empty when the caller gave none. */
    record Caller(String key, String name, String phone) {}

    Callers(Settings settings) {
        Dice dice = new Dice(settings.seed(), "callers");
        for (int i = 0; i < HOW_MANY; i++) {
            String[] name = Names.person(dice);
            String block = i < 2_500 ? "5550" : "7010";
            callers.add(new Caller(
                    String.format(Locale.ROOT, "C%04d", i + 1),
                    dice.chance(0.15) ? "" : name[0] + ' ' + name[1],
                    String.format(Locale.ROOT, "+61 2 %s %04d", block, i % 2_500 * 4 + dice.below(4))));
        }
    }

    List<Caller> all() {
        return callers;
    }

    /** A caller; the first of the list ring much more often than the last. */
    Caller draw(Dice dice) {
        double of = dice.unit();
        return callers.get((int) (of * of * callers.size()));
    }
}
