package org.culvert.exchange.reading;

import org.jspecify.annotations.Nullable;

/** What the words of a cell are taken for where nobody decided otherwise. */
public final class CellWords {
    private CellWords() {}

    /** What a word means in a column that holds a field, or null where it means nothing by itself. */
    public static @Nullable String meaning(Headings.Field field, String word) {
        return switch (field) {
            case direction -> WordTables.direction(word);
            case vitality -> WordTables.vitality(word);
            case sex -> WordTables.sex(word);
            case scientificName, vernacularName -> Domestic.isNamedBy(word) ? ReadingSettings.DOMESTIC : null;
            default -> null;
        };
    }
}
