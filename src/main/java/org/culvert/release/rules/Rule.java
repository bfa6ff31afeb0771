package org.culvert.release.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One rule as it stood when it was used.
 *
 * @param jurisdiction ISO 3166 code of a country or of a part of one, or {@code network} for the network's own
 * @param taxonGroup key of the group it is about; null with {@code scientificName} null: it is about all
 * @param scientificName the taxon it is about, its lower ranks included
 * @param exceptScientificNames taxa it is not about
 * @param appliesTo whether it means adults, orphans or any
 * @param appliesDefinition what this rule calls an adult or an orphan
 * @param greatestDistanceMetres for the questions that ask for metres: {@link Question#asksForMetres}
 * @param greatestDays for {@link Question#daysInCare}
 * @param originKnownWithinMetres a found place known less well than this does not count as known; null: however well
 * @param asksSecondPerson whether a second person must agree before it is set aside
 * @param orderOfPreference where an animal should rather go, in the rule's own order and words
 * @param allowedGrounds for {@link Question#foundPlaceFirst}: the grounds on which the found place may be left
 * @param unknownOrigin what it says of animals of unknown origin; null where it says nothing
 * @param consents whose consent is needed beside, in words
 * @param reviewBy the day from which it asks before it passes, until someone has read its source again
 * @param validTo the first day on which it no longer holds
 */
public record Rule(
        UUID id,
        int version,
        String jurisdiction,
        RuleKind kind,
        @Nullable String taxonGroup,
        @Nullable String scientificName,
        List<String> exceptScientificNames,
        AppliesTo appliesTo,
        @Nullable String appliesDefinition,
        Question test,
        @Nullable Double greatestDistanceMetres,
        @Nullable Integer greatestDays,
        @Nullable Double originKnownWithinMetres,
        List<String> orderOfPreference,
        boolean asksSecondPerson,
        List<Ground> allowedGrounds,
        @Nullable UnknownOrigin unknownOrigin,
        @Nullable String consents,
        String words,
        String source,
        LocalDate readOn,
        LocalDate reviewBy,
        LocalDate validFrom,
        @Nullable LocalDate validTo) {
    /** ISO 3166-1 for a country, ISO 3166-2 for a part of one. */
    public static final String ISO_3166 = "[A-Z]{2}(-[A-Z0-9]{1,3})?";

    /** The jurisdiction of the network's own rules. */
    public static final String NETWORK = "network";

    public enum AppliesTo {
        adult,
        orphan,
        hatchling,
        any
    }

    /** What a rule asks. */
    public enum Question {
        /** Its kind is let go nowhere: introduced, or prohibited. Nothing lifts it while the rule holds. */
        noRelease,
        /** It goes back where it was found, unless that place is unsuitable on a ground that the rule allows. */
        foundPlaceFirst,
        /** It goes no farther than some metres from where it was found. */
        greatestDistance,
        /** Who owns the land consents. */
        landownerConsent,
        /** Who keeps a park or reserve has approved, where the place is in one. */
        parkApproval,
        /** Who may allow it across a border has approved. */
        borderApproval,
        /** The wildlife officer of the place has approved. */
        officerApproval,
        /** An animal of the water goes to water of the catchment that it comes from. */
        sameCatchment,
        /** Water is no farther than some metres. */
        waterWithin,
        /** It is let go at a time of the day when its kind is about. */
        activePeriod,
        /** Not in weather that is likely to be hard on it. */
        fairWeather,
        /** It has been in care no longer than some days. */
        daysInCare,
        /** A vet has signed that it is fit. */
        fitness,
        /** It was not kept with pets. */
        notWithPets,
        /** Animals that were raised with it go with it. */
        matesGoToo;

        /** Whether it is held against metres. */
        public boolean asksForMetres() {
            return this == greatestDistance || this == waterWithin;
        }
    }

    /** What a rule may say of animals whose origin nobody knows. */
    public enum UnknownOrigin {
        notReleasable,
        withinRange,
        withinRangeWithApproval
    }

    public Rule {
        exceptScientificNames = List.copyOf(exceptScientificNames);
        allowedGrounds = List.copyOf(allowedGrounds);
        orderOfPreference = orderOfPreference == null ? List.of() : List.copyOf(orderOfPreference);
        if (test.asksForMetres() != (greatestDistanceMetres != null)) {
            throw new IllegalArgumentException("a rule has a greatest distance exactly when it asks for one");
        }
        if ((test == Question.daysInCare) != (greatestDays != null)) {
            throw new IllegalArgumentException("a rule has a number of days exactly when it asks for one");
        }
    }

    /** Whether it is about an animal like this, whatever the place and day. */
    public boolean isAbout(Subject subject) {
        boolean named = scientificName == null || isOf(scientificName, subject.scientificName());
        boolean grouped = taxonGroup == null || taxonGroup.equals(subject.taxonGroup());
        boolean excepted = exceptScientificNames.stream().anyMatch(name -> isOf(name, subject.scientificName()));
        boolean aged = switch (appliesTo) {
            case any -> true;
            case hatchling -> subject.hatchling();
            case orphan -> subject.orphan() && !subject.hatchling();
            case adult -> !subject.orphan() && !subject.hatchling();
        };
        return named && grouped && !excepted && aged;
    }

    /** Whether it holds in a place's jurisdiction: its own, that of its country, and the network's everywhere. */
    public boolean holdsIn(String placeJurisdiction) {
        return jurisdiction.equals(NETWORK) || covers(jurisdiction, placeJurisdiction);
    }

    /** Whether one ISO 3166 code is another, or a part of the country that the other means. */
    static boolean covers(String wider, String code) {
        return code.equals(wider) || code.startsWith(wider + "-");
    }

    /** What lifts it where it was not passed. */
    public Lifting lifting() {
        return test == Question.noRelease ? Lifting.byNothing : kind.lifting();
    }

    public boolean holdsOn(LocalDate day) {
        return !day.isBefore(validFrom) && (validTo == null || day.isBefore(validTo));
    }

    /** Whether its source should have been read again by that day. */
    public boolean isDueForReview(LocalDate day) {
        return !day.isBefore(reviewBy);
    }

    public Optional<Ground> findGround(String key) {
        return allowedGrounds.stream()
                .filter(ground -> ground.key().equals(key))
                .findFirst();
    }

    /** A taxon is of a taxon when it is that, or its name goes on from that name. */
    static boolean isOf(String wider, String name) {
        return name.equals(wider) || name.startsWith(wider + " ");
    }
}
