package org.culvert.exchange.reading;

import org.jspecify.annotations.Nullable;

/**
 * What a cell, a row or a whole file has that somebody must know of. Kinds are few and stable, since reports are filtered by
 * them.
 *
 * @param column index of the column, or null where it is of the row or the file
 * @param detail what is there, as a sentence
 * @param wanted what would be right, or null where nothing is wrong
 */
public record Finding(
        Kind kind,
        Weight weight,
        @Nullable Integer column,
        String detail,
        @Nullable String wanted) {
    /** What it means for the row. */
    public enum Weight {
        /** Told, and nothing more. */
        note,
        /** Somebody has to decide. */
        doubt,
        /** The row cannot be taken as it is. */
        refusal
    }

    /** One for each kind of mess. */
    public enum Kind {
        missingDay,
        unreadableDay,
        twoWaysOfDay,
        dayInFuture,
        yearAlone,
        severalDays,
        yearOutside,
        monthsWithoutRows,
        missingTime,
        unreadableTime,
        officeHours,
        missingPlace,
        routeOnly,
        localityOnly,
        unreadableCoordinates,
        halfACoordinate,
        zeroCoordinates,
        otherDatum,
        otherDecimalMark,
        swappedAxes,
        missingSign,
        outsideRegion,
        noRoadNear,
        roadInDoubt,
        unknownRoad,
        noChainageThere,
        unreadableChainage,
        roundedChainage,
        chainageInText,
        crossingInText,
        blockAddress,
        copiedPin,
        tiedPins,
        oddDirection,
        unreadableUncertainty,
        noUncertainty,
        noEffort,
        missingAnimal,
        unknownAnimal,
        undecidedAnimal,
        namesDisagree,
        synonym,
        domestic,
        unreadableCount,
        unknownWord,
        repeatedInFile,
        perhapsOneAnimal,
        inRegister,
        cellsMissing,
        cellsTooMany,
        brokenQuote,
        unreadableCharacters,
        asAbove,
        noRecord
    }

    public static Finding note(Kind kind, @Nullable Integer column, String detail) {
        return new Finding(kind, Weight.note, column, detail, null);
    }

    public static Finding doubt(Kind kind, @Nullable Integer column, String detail, String wanted) {
        return new Finding(kind, Weight.doubt, column, detail, wanted);
    }

    public static Finding refusal(Kind kind, @Nullable Integer column, String detail, String wanted) {
        return new Finding(kind, Weight.refusal, column, detail, wanted);
    }
}
