package org.culvert.hotspot.beside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.hotspot.beside.Scenes.event;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

class IsItNewTest {
    private static final LocalDate FROM = LocalDate.of(2020, 1, 1);
    private static final LocalDate TO = LocalDate.of(2023, 12, 31);

    /** Sixty strewn over three years at places of their own, and ten in the last month within 90 m of one place. */
    private static List<DatedEvent> withSomethingNew() {
        List<DatedEvent> events = strewn();
        for (int i = 0; i < 10; i++) {
            events.add(event(1, 2000 + 10 * i, "2023-12-" + (10 + i)));
        }
        return events;
    }

    private static List<DatedEvent> strewn() {
        Random random = new Random(7);
        List<DatedEvent> events = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            events.add(event(
                    i % 2,
                    random.nextInt(5000),
                    FROM.plusDays(random.nextInt(1461)).toString()));
        }
        return events;
    }

    private static IsItNew ask(List<DatedEvent> events, IntPredicate links, int threads) {
        return IsItNew.ask(Scenes.scene(), events, FROM, TO, 500, 3, 999, 1, links, threads);
    }

    @Test
    void tenInTheLastMonthAtOnePlaceAreNew() {
        IsItNew isNew = ask(withSomethingNew(), link -> true, 2);
        assertThat(isNew.places()).hasSize(1);
        IsItNew.NewPlace place = isNew.places().get(0);
        assertThat(place.centre().road()).isEqualTo("Long Road");
        assertThat(place.centre().chainageMetres()).isBetween(6500.0, 7600.0);
        assertThat(place.incidents()).isGreaterThanOrEqualTo(10);
        assertThat(place.expected()).isLessThan(4);
        assertThat(place.adjustedP()).isEqualTo(0.001);
        assertThat(place.firstDay()).isBetween(LocalDate.of(2023, 9, 1), LocalDate.of(2023, 12, 10));
        assertThat(isNew.sentence()).contains("at most 5 %", "dealing the days out anew 999 times");
        assertThat(isNew.notControlled()).isNotEmpty();
    }

    /** A place that was always busy is not new, however busy: the same ten at one place, over the years. */
    @Test
    void aPlaceThatWasAlwaysBusyIsNotNew() {
        List<DatedEvent> events = strewn();
        for (int i = 0; i < 10; i++) {
            events.add(event(1, 2000 + 10 * i, "202" + i % 4 + "-0" + (1 + i % 9) + "-15"));
        }
        IsItNew isNew = ask(events, link -> true, 2);
        assertThat(isNew.places()).isEmpty();
        assertThat(isNew.sentence()).startsWith("Nothing is told to be new");
        assertThat(isNew.smallestP()).isGreaterThan(0.05);
    }

    @Test
    void orderAndThreadsChangeNothing() {
        List<DatedEvent> events = withSomethingNew();
        IsItNew one = ask(events, link -> true, 1);
        Collections.reverse(events);
        assertThat(ask(events, link -> true, 2)).isEqualTo(one);
    }

    @Test
    void aPlaceOnTheRoadOfAnotherOwnerIsNotNamedAndItsPStays() {
        IsItNew isNew = ask(withSomethingNew(), link -> link == 0, 2);
        assertThat(isNew.places()).isEmpty();
        assertThat(isNew.smallestP()).isEqualTo(0.001);
    }

    @Test
    void ofTooFewNothingIsSaid() {
        IsItNew isNew = ask(withSomethingNew().subList(0, 5), link -> true, 1);
        assertThat(isNew.simulations()).isZero();
        assertThat(isNew.smallestP()).isNull();
        assertThat(isNew.sentence()).contains("it takes 6");
        assertThat(ask(List.of(), link -> true, 1).sentence()).contains("With 0 collisions");
    }

    @Test
    void ofMoreThanTwoThousandFewerSetsAreMadeAndSaid() {
        List<DatedEvent> events = new ArrayList<>();
        for (int i = 0; i < 2100; i++) {
            events.add(event(i % 2, 2.3 * i, FROM.plusDays((i * 37L) % 1461).toString()));
        }
        IsItNew isNew = IsItNew.ask(Scenes.scene(), events, FROM, TO, 50, 3, 999, 1, link -> true, 2);
        assertThat(isNew.simulations()).isEqualTo(199);
        assertThat(isNew.sentence()).contains("199 times");
    }
}
