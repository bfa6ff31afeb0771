package org.culvert.exchange.files;

import java.util.List;
import org.culvert.platform.CulvertException;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Why nothing was taken of a file. */
public record FileFailure(List<Wrong> wrong) {
    private static final int MOST_TOLD = 20;

    /**
     * One thing that is wrong.
     *
     * @param field of what was told, or where in the file: {@code features.3}; empty where it is of neither
     * @param wanted what would be right
     * @param otherReading what may have been meant instead
     */
    public record Wrong(
            String field,
            String detail,
            String wanted,
            @Nullable String otherReading) {}

    static FileFailure of(CulvertException refused) {
        if (refused instanceof InvalidException invalid) {
            return new FileFailure(invalid.errors().stream()
                    .limit(MOST_TOLD)
                    .map(error -> new Wrong(
                            error.field(),
                            error.detail(),
                            error.wanted(),
                            error.otherReading() == null ? null : String.valueOf(error.otherReading())))
                    .toList());
        }
        return of(String.valueOf(refused.getMessage()));
    }

    static FileFailure of(String why) {
        return new FileFailure(List.of(new Wrong("", why, "the file read once more", null)));
    }
}
