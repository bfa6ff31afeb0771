package org.culvert.web.acts;

import java.util.List;

/**
 * A thing as a page shows it.
 *
 * @param id empty where it has none
 * @param title empty where nothing of it heads it
 * @param state {@code due} where it holds and is to be looked at again, {@code holds}, {@code later}, {@code ended}
 * @param until the day from which it is to be looked at again, empty where none is told
 * @param note a sentence of the service, empty where there is none
 */
public record ToldThing(
        String id, List<Cell> title, String state, String until, List<Cell> cells, String note, List<Deed> acts) {
    /**
     * Something that may be done.
     *
     * @param key name of its words
     */
    public record Deed(String name, String key) {
        public static Deed of(Act<?> act) {
            return new Deed(act.name(), act.key());
        }
    }

    /** What is told under a label. */
    public record Cell(String label, String text) {}
}
