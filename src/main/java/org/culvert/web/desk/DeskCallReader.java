package org.culvert.web.desk;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.culvert.call.CallEntry;
import org.culvert.call.CallEntry.Answer;
import org.culvert.call.CallEntry.Vitality;
import org.culvert.call.CallService;
import org.culvert.platform.InvalidException;
import org.culvert.platform.RegionService;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.SaidPlaces;
import org.culvert.web.Typed;
import org.jspecify.annotations.Nullable;

/**
 * Reads what was typed into a call. Nothing that was typed keeps a call from being kept: what cannot be read stands at the end
 * of the caller's words, as it was typed.
 */
@ApplicationScoped
class DeskCallReader {
    private static final int LONGEST_WORDS = 20_000;
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_PHONE = 100;
    private static final int LONGEST_CONDITION = 2_000;
    private static final int MOST_ANIMALS = 1_000;

    private final SaidPlaces said;
    private final PlaceReading places;
    private final AnimalNames names;
    private final CallService calls;
    private final RegionService region;
    private final Clock clock;

    DeskCallReader(
            SaidPlaces said,
            PlaceReading places,
            AnimalNames names,
            CallService calls,
            RegionService region,
            Clock clock) {
        this.said = said;
        this.places = places;
        this.names = names;
        this.calls = calls;
        this.region = region;
        this.clock = clock;
    }

    CallEntry read(DeskCall typed) {
        List<String> left = new ArrayList<>();
        Instant begun = instant(typed.begunAt);
        Instant now = clock.instant();
        Instant received =
                begun == null || begun.isAfter(now) || begun.isBefore(now.minusSeconds(4 * 3600)) ? now : begun;
        Instant since = since(typed.since, received, left);
        PlaceAsGiven place = place(typed.place, left);
        String phone = upTo(LONGEST_PHONE, typed.phone, left);
        String name = upTo(LONGEST_NAME, typed.name, left);
        CallEntry.Animal animal = animal(typed, left);
        String cause = Typed.given(typed.cause);
        if (cause != null && !calls.listCauses().containsKey(cause)) {
            left.add(cause);
            cause = null;
        }
        String police = upTo(LONGEST_NAME, typed.policeReference, left);
        return new CallEntry(
                received,
                since,
                null,
                new CallEntry.People(
                        choice(Answer.class, typed.anyoneHurt), choice(Answer.class, typed.offTheRoad), police),
                phone == null && name == null ? null : new CallEntry.Caller(name, phone, null, null),
                words(typed.words, left),
                cause == null ? "unknown" : cause,
                animal == null ? List.of() : List.of(animal),
                place,
                null);
    }

    private @Nullable PlaceAsGiven place(@Nullable String typed, List<String> left) {
        String text = Typed.given(typed);
        if (text == null) {
            return null;
        }
        try {
            PlaceAsGiven place = said.read(text);
            places.understand(place);
            return place;
        } catch (InvalidException notUnderstood) {
            left.add(text);
            return null;
        }
    }

    CallEntry.@Nullable Animal animal(DeskCall typed, List<String> left) {
        String called = upTo(LONGEST_NAME, typed.animal, left);
        String condition = upTo(LONGEST_CONDITION, typed.condition, left);
        Vitality vitality = choice(Vitality.class, typed.vitality);
        Integer count = count(typed.count, left);
        if (called == null && condition == null && vitality == Vitality.unknown && count == null) {
            return null;
        }
        AnimalNames.Meant meant = called == null ? new AnimalNames.Meant(null, null, null) : names.find(called);
        return new CallEntry.Animal(
                meant.scientificName(),
                meant.taxonGroup(),
                called,
                CallEntry.Verification.unverified,
                count == null ? 1 : count,
                vitality,
                null,
                null,
                condition,
                choice(Answer.class, typed.pouchChecked),
                false);
    }

    private static @Nullable Integer count(@Nullable String typed, List<String> left) {
        String text = Typed.given(typed);
        if (text == null) {
            return null;
        }
        if (text.matches("\\d{1,4}") && Integer.parseInt(text) >= 1 && Integer.parseInt(text) <= MOST_ANIMALS) {
            return Integer.valueOf(text);
        }
        left.add(text);
        return null;
    }

    /** A time of day, of the last time that it was that late. */
    private @Nullable Instant since(@Nullable String typed, Instant received, List<String> left) {
        String text = Typed.given(typed);
        if (text == null) {
            return null;
        }
        try {
            ZonedDateTime now = received.atZone(region.zone());
            ZonedDateTime at = now.with(LocalTime.parse(text));
            return (at.isAfter(now) ? at.minusDays(1) : at).toInstant();
        } catch (DateTimeException notATime) {
            left.add(text);
            return null;
        }
    }

    private static @Nullable Instant instant(@Nullable String text) {
        try {
            String given = Typed.given(text);
            return given == null ? null : Instant.parse(given);
        } catch (DateTimeException notAnInstant) {
            // Nobody typed it
            return null;
        }
    }

    private static @Nullable String words(@Nullable String typed, List<String> left) {
        List<String> all = new ArrayList<>();
        String words = Typed.given(typed);
        if (words != null) {
            all.add(words);
        }
        all.addAll(left);
        String whole = String.join("\n", all);
        if (whole.length() > LONGEST_WORDS) {
            throw InvalidException.of(
                    "words", "This is too long.", "at most " + LONGEST_WORDS + " characters in all fields together");
        }
        return whole.isEmpty() ? null : whole;
    }

    private static @Nullable String upTo(int most, @Nullable String typed, List<String> left) {
        String text = Typed.given(typed);
        if (text != null && text.length() > most) {
            left.add(text);
            return null;
        }
        return text;
    }

    /** What no browser sends of these pages counts as not known. */
    private static <E extends Enum<E>> E choice(Class<E> of, @Nullable String typed) {
        E[] all = of.getEnumConstants();
        return Arrays.stream(all)
                .filter(one -> one.name().equals(typed))
                .findFirst()
                .orElseGet(() -> Enum.valueOf(of, "unknown"));
    }
}
