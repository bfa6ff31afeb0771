package org.culvert.care.clock.limit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.care.clock.limit.ClockReader.Listed;
import org.culvert.care.clock.limit.Length.Unit;
import org.culvert.care.clock.limit.Limit.Binds;
import org.culvert.care.clock.limit.Limit.Ends;
import org.culvert.care.clock.limit.Limit.Starts;
import org.culvert.care.clock.limit.Running.Doubt;
import org.culvert.care.clock.limit.Running.State;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The limits are those that these read: 312 IAC 9-10-9 (Indiana: 24 hours from finder to permit holder), 2 CCR 406-14-1405
 * (Colorado: a vet hands on or tells within 24 hours), AGFC 09.12 (Arkansas: 72 hours after it is stable), GL07 (England: 15
 * days), WAC 220-450 (Washington: 180 days; 24 hours to tell of a listed animal, and of a death).
 */
class ClockReaderTest {
    private static final Instant FOUND = Instant.parse("2026-03-01T08:00:00Z");
    private static final Instant NOW = FOUND.plus(400, ChronoUnit.DAYS);

    private static final Limit INDIANA = limit(
            Binds.unauthorisedHolder,
            Starts.takenIntoThisCustody,
            new Length(24, Unit.hours),
            Ends.handedToAuthorisedHolder,
            Ends.caseEnded);
    private static final Limit COLORADO_VET = limit(
            Binds.unauthorisedClinic,
            Starts.takenIntoThisCustody,
            new Length(24, Unit.hours),
            Ends.handedToAuthorisedHolder,
            Ends.toldAuthority,
            Ends.caseEnded);
    private static final Limit ARKANSAS = limit(
            Binds.unauthorisedClinic,
            Starts.stabilised,
            new Length(72, Unit.hours),
            Ends.handedToAuthorisedHolder,
            Ends.caseEnded);
    private static final Limit ENGLAND = limit(
            Binds.authorisedHolder,
            Starts.takenIntoThisCustody,
            new Length(15, Unit.days),
            Ends.handedToClinic,
            Ends.toldAuthority,
            Ends.caseEnded);
    private static final Limit WASHINGTON =
            limit(Binds.anyone, Starts.received, new Length(180, Unit.days), Ends.caseEnded);
    private static final Limit TELL =
            limit(Binds.anyone, Starts.received, new Length(24, Unit.hours), Ends.toldAuthority);
    private static final Limit TELL_OF_DEATH =
            limit(Binds.anyone, Starts.deathInCare, new Length(24, Unit.hours), Ends.toldAuthority);

    private static Limit limit(Binds binds, Starts starts, Length length, Ends... ends) {
        return new Limit(
                UUID.randomUUID(), binds, starts, Set.of(ends), length, 6, List.of(), LocalDate.of(2020, 1, 1), null);
    }

    private static Limit listed(Limit limit, String word) {
        return new Limit(
                limit.id(),
                limit.binds(),
                limit.starts(),
                limit.ends(),
                limit.length(),
                limit.warnBeforeHours(),
                List.of(word),
                limit.validFrom(),
                limit.validTo());
    }

    private static Instant after(double hours) {
        return FOUND.plusSeconds(Math.round(hours * 3600));
    }

    private static Held finder(double from, double to) {
        return new Held(UUID.randomUUID(), false, false, after(from), after(to));
    }

    private static Held carer(double from, @Nullable Double to) {
        return new Held(UUID.randomUUID(), true, false, after(from), to == null ? null : after(to));
    }

    private static Held vet(double from, @Nullable Double to) {
        return new Held(UUID.randomUUID(), false, true, after(from), to == null ? null : after(to));
    }

    private static History open(Held... custody) {
        return new History(FOUND, List.of(custody), List.of(), null, false);
    }

    private static List<Running> read(Limit limit, History history, Instant now, Instant... told) {
        return new ClockReader(ZoneOffset.UTC, now).read(limit, history, List.of(told), null, Listed.yes);
    }

    @ParameterizedTest
    @CsvSource({"17.9, running", "18, warned", "24, warned", "24.001, overdue"})
    void aFinderHasTwentyFourHours(double hours, State state) {
        var finder = new Held(UUID.randomUUID(), false, false, FOUND, null);
        assertThat(read(INDIANA, open(finder), after(hours))).singleElement().satisfies(clock -> {
            assertThat(clock.state()).isEqualTo(state);
            assertThat(clock.dueAt()).isEqualTo(after(24));
            assertThat(clock.linkId()).isEqualTo(finder.id());
        });
    }

    /** Another finder, or a clinic without a permit, does not end it; who took it on has a clock of their own. */
    @Test
    void onlyAPermitHolderEndsIt() {
        History passedOn = open(finder(0, 10), finder(10, 20), vet(20, 30.0), carer(30, null));
        assertThat(read(INDIANA, passedOn, NOW))
                .extracting(Running::state, Running::endedAt, Running::endedBy)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(State.endedLate, after(30), Ends.handedToAuthorisedHolder),
                        org.assertj.core.groups.Tuple.tuple(
                                State.endedInTime, after(30), Ends.handedToAuthorisedHolder));
        assertThat(read(INDIANA, open(carer(0, null)), NOW)).isEmpty();
    }

    @Test
    void aVetHandsOnOrTellsWhicheverComesFirst() {
        History kept = open(vet(0, null));
        assertThat(read(COLORADO_VET, kept, after(30)))
                .extracting(Running::state)
                .containsExactly(State.overdue);
        // What was told before the vet had it does not count
        assertThat(read(COLORADO_VET, kept, after(30), after(-1), after(26), after(23)))
                .extracting(Running::state, Running::endedAt)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(State.endedInTime, after(23)));
        assertThat(read(COLORADO_VET, open(vet(0, 20.0), carer(20, null)), after(30), after(23)))
                .extracting(Running::endedBy)
                .containsExactly(Ends.handedToAuthorisedHolder);
    }

    @Test
    void whereItIsNotToldWhenItWasStableItCantBeTold() {
        var arrived = new History(FOUND, List.of(vet(1, null)), List.of(new History.Seen(after(2), null)), null, false);
        assertThat(read(ARKANSAS, arrived, after(3))).singleElement().satisfies(clock -> {
            assertThat(clock.state()).isEqualTo(State.cantTell);
            assertThat(clock.doubt()).isEqualTo(Doubt.stabilisedNotTold);
            assertThat(clock.startedAt()).isNull();
            assertThat(clock.dueAt()).as("at the earliest").isEqualTo(after(74));
        });
        var stable =
                new History(FOUND, List.of(vet(1, null)), List.of(new History.Seen(after(2), after(12))), null, false);
        assertThat(read(ARKANSAS, stable, after(83))).extracting(Running::state).containsExactly(State.warned);
        assertThat(read(ARKANSAS, stable, after(84.1)))
                .extracting(Running::state)
                .containsExactly(State.overdue);
        // Handed on within 72 hours of its coming: in time whenever it was stable
        var soon = new History(
                FOUND, List.of(vet(1, 40.0), carer(40, null)), List.of(new History.Seen(after(2), null)), null, false);
        assertThat(read(ARKANSAS, soon, NOW)).extracting(Running::state).containsExactly(State.endedInTime);
        var late = new History(
                FOUND, List.of(vet(1, 90.0), carer(90, null)), List.of(new History.Seen(after(2), null)), null, false);
        assertThat(read(ARKANSAS, late, NOW)).extracting(Running::state).containsExactly(State.cantTell);
    }

    @Test
    void aKeeperPassesItToAVetWithinFifteenDays() {
        assertThat(read(ENGLAND, open(finder(0, 1), carer(1, 15 * 24.0), vet(15 * 24.0, null)), NOW))
                .extracting(Running::state, Running::dueAt, Running::endedBy)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(
                        State.endedInTime, after(1 + 15 * 24), Ends.handedToClinic));
    }

    @Test
    void careOfAHundredAndEightyDaysIsOneClockAndIsExtended() {
        History open = open(finder(0, 5), carer(5, 500.0), carer(700, null));
        Instant later = after(200 * 24);
        assertThat(read(WASHINGTON, open, later)).extracting(Running::state).containsExactly(State.overdue);
        Instant until = after(270 * 24);
        assertThat(new ClockReader(ZoneOffset.UTC, later).read(WASHINGTON, open, List.of(), until, Listed.yes))
                .singleElement()
                .satisfies(clock -> {
                    assertThat(clock.state()).isEqualTo(State.running);
                    assertThat(clock.dueAt()).isEqualTo(until);
                    assertThat(clock.extendedUntil()).isEqualTo(until);
                });
        assertThat(new ClockReader(ZoneOffset.UTC, later).read(WASHINGTON, open, List.of(), after(24), Listed.yes))
                .as("an extension shortens nothing")
                .singleElement()
                .satisfies(clock -> {
                    assertThat(clock.state()).isEqualTo(State.overdue);
                    assertThat(clock.extendedUntil()).isNull();
                });
        var released = new History(FOUND, open.custody(), List.of(), after(179 * 24), false);
        assertThat(read(WASHINGTON, released, NOW)).extracting(Running::state).containsExactly(State.endedInTime);
    }

    @Test
    void howTheLawListsItDecidesAndNotKnowingIsSaid() {
        Limit threatened = listed(TELL, "threatened");
        History open = open(carer(0, null));
        var reader = new ClockReader(ZoneOffset.UTC, after(30));
        assertThat(reader.read(threatened, open, List.of(), null, Listed.no)).isEmpty();
        assertThat(reader.read(threatened, open, List.of(), null, Listed.yes))
                .extracting(Running::state)
                .containsExactly(State.overdue);
        assertThat(reader.read(threatened, open, List.of(), null, Listed.unknown))
                .extracting(Running::state, Running::doubt, Running::dueAt)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(State.cantTell, Doubt.listingNotKnown, after(24)));
        assertThat(reader.read(threatened, open, List.of(after(2)), null, Listed.unknown))
                .as("told in time, whether it had to be or not")
                .extracting(Running::state)
                .containsExactly(State.endedInTime);
    }

    @Test
    void aDeathInCareIsToldOfAfterTheCaseHasEnded() {
        var died = new History(FOUND, List.of(carer(0, 50.0)), List.of(), after(50), true);
        assertThat(read(TELL_OF_DEATH, died, after(75)))
                .extracting(Running::state)
                .containsExactly(State.overdue);
        assertThat(read(TELL_OF_DEATH, died, after(75), after(49), after(60)))
                .extracting(Running::state, Running::endedAt)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(State.endedInTime, after(60)));
        var foundDead = new History(FOUND, List.of(), List.of(), FOUND, true);
        assertThat(read(TELL_OF_DEATH, foundDead, after(75))).isEmpty();
        var released = new History(FOUND, List.of(carer(0, 50.0)), List.of(), after(50), false);
        assertThat(read(TELL_OF_DEATH, released, after(75))).isEmpty();
    }

    @Test
    void anAnimalWithoutAHolderIsInDoubtWhileItsCaseIsOpen() {
        assertThat(read(INDIANA, open(), after(30)))
                .extracting(Running::state, Running::doubt)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(State.cantTell, Doubt.nobodyHoldsIt));
        assertThat(read(INDIANA, new History(FOUND, List.of(), List.of(), after(1), false), after(30)))
                .isEmpty();
    }

    @Test
    void aLimitBindsFromTheDayOnWhichItHoldsAndUntilThat() {
        History open = open(new Held(UUID.randomUUID(), false, false, FOUND, null));
        for (boolean[] spans : new boolean[][] {{false, true}, {true, false}}) {
            var limit = new Limit(
                    UUID.randomUUID(),
                    Binds.anyone,
                    Starts.found,
                    Set.of(Ends.caseEnded),
                    new Length(1, Unit.days),
                    0,
                    List.of(),
                    LocalDate.of(2026, 3, spans[0] ? 4 : 3),
                    null);
            assertThat(read(limit, open, Instant.parse("2026-03-03T12:00:00Z"))).hasSize(spans[1] ? 1 : 0);
        }
        var gone = new Limit(
                UUID.randomUUID(),
                Binds.anyone,
                Starts.found,
                Set.of(Ends.caseEnded),
                new Length(1, Unit.days),
                0,
                List.of(),
                LocalDate.of(2020, 1, 1),
                LocalDate.of(2026, 3, 1));
        assertThat(read(gone, open, NOW)).isEmpty();
    }
}
