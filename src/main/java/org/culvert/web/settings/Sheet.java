package org.culvert.web.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.culvert.platform.Page;
import org.culvert.web.acts.Act;
import org.culvert.web.acts.WordKeys;
import org.jspecify.annotations.Nullable;

/** A kind of things that are data: where they are listed, and what may be done with them. */
final class Sheet {
    /** What it is for, in the order of the page. */
    enum Purpose {
        time,
        law,
        health,
        care,
        release,
        animals,
        roads,
        network,
        people
    }

    /** @param more whether there are more than these */
    record Listed(List<?> items, boolean more) {}

    private static final int MOST = 200;

    private final String name;
    private final Purpose purpose;
    private final Supplier<Listed> list;
    private final List<SheetAct<?>> acts = new ArrayList<>();
    private String reads;
    private List<String> titles = List.of("name");
    private @Nullable Function<UUID, Object> one;
    private boolean lastDay;
    private boolean alone;
    private boolean done;
    private String home;

    private Sheet(String name, Purpose purpose, Supplier<Listed> list) {
        this.name = name;
        this.purpose = purpose;
        this.list = list;
        this.reads = "GET /api/" + name;
        this.home = "/settings/" + name;
    }

    /** @param name as the API has it in its addresses */
    static Sheet of(String name, Purpose purpose, Supplier<? extends List<?>> list) {
        return new Sheet(name, purpose, () -> new Listed(list.get(), false));
    }

    static Sheet paged(String name, Purpose purpose, Function<Integer, Page<?>> list) {
        return new Sheet(name, purpose, () -> {
            Page<?> page = list.apply(MOST);
            return new Listed(page.items(), page.next() != null);
        });
    }

    /** There is one thing of the kind alone. */
    static Sheet alone(String name, Purpose purpose, Supplier<Optional<?>> only) {
        var sheet = new Sheet(
                name,
                purpose,
                () -> new Listed(only.get().<List<?>>map(List::of).orElseGet(List::of), false));
        sheet.alone = true;
        return sheet;
    }

    /** @param fields of which the first that is told heads a thing, the others go beside it */
    Sheet titled(String... fields) {
        titles = List.of(fields);
        return this;
    }

    /** How a single thing is read. */
    Sheet one(Function<UUID, Object> reader) {
        one = reader;
        return this;
    }

    /** Its {@code validTo} is the last day on which it holds, and not the first on which it does not. */
    Sheet lastDay() {
        lastDay = true;
        return this;
    }

    /** Of what was done and is over: that it came to its end takes nothing from it. */
    Sheet ofThingsDone() {
        done = true;
        return this;
    }

    Sheet readBy(String operation) {
        reads = operation;
        return this;
    }

    /** Another page than its own on which its things are looked at. */
    Sheet home(String address) {
        home = address;
        return this;
    }

    <E> Sheet entered(Class<E> body, Function<E, @Nullable Object> entering, String... leftOut) {
        return act(
                new Act<>("entry", "POST /api/" + name, null, false, body, Set.of(leftOut)),
                (id, entry) -> entering.apply(entry));
    }

    /** A change of one thing that the API has as {@code POST} below it. */
    <E> Sheet changed(String act, String tag, Class<E> body, SheetAct.Taking<E> taking) {
        return act(new Act<>(act, "POST /api/" + name + "/{id}/" + act, tag, true, body, Set.of()), taking);
    }

    <E> Sheet corrected(String tag, Class<E> body, SheetAct.Taking<E> taking, String... leftOut) {
        return act(new Act<>("correction", "PATCH /api/" + name + "/{id}", tag, true, body, Set.of(leftOut)), taking);
    }

    <E> Sheet act(Act<E> act, SheetAct.Taking<E> taking) {
        acts.add(new SheetAct<>(act, taking, false));
        return this;
    }

    /** Its answer has a secret that nobody is shown again. */
    <E> Sheet actShownOnce(Act<E> act, SheetAct.Taking<E> taking) {
        acts.add(new SheetAct<>(act, taking, true));
        return this;
    }

    String name() {
        return name;
    }

    Purpose purpose() {
        return purpose;
    }

    String reads() {
        return reads;
    }

    List<String> titles() {
        return titles;
    }

    boolean hasLastDay() {
        return lastDay;
    }

    boolean isOfThingsDone() {
        return done;
    }

    boolean isAlone() {
        return alone;
    }

    String home() {
        return home;
    }

    Listed list() {
        return list.get();
    }

    List<SheetAct<?>> acts() {
        return acts;
    }

    Optional<SheetAct<?>> findAct(String act) {
        return acts.stream().filter(one -> one.act().name().equals(act)).findFirst();
    }

    /** One thing, where single ones are read. */
    Optional<Object> find(UUID id) {
        if (alone) {
            return list().items().stream().findFirst().map(only -> (Object) only);
        }
        return one == null ? Optional.empty() : Optional.of(one.apply(id));
    }

    /** Its name in words of Java, by which message bundles know it. */
    String key() {
        return WordKeys.of(name);
    }

    /** By what name the words of a field are found. */
    String called(String field) {
        return field.equals("validTo") && lastDay ? "lastDay" : field;
    }
}
