package org.culvert.platform;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list, and the cursor of the next.
 *
 * @param items the page
 * @param next opaque cursor for the {@code cursor} parameter, or null on the last page
 */
public record Page<T>(List<T> items, @Nullable String next) {
    /** Cuts a page from up to {@code limit + 1} rows, the last of which only shows that there is more. */
    public static <R, T> Page<T> of(List<R> rows, int limit, Function<R, T> view, Function<R, String> cursor) {
        boolean more = rows.size() > limit;
        List<R> shown = more ? rows.subList(0, limit) : rows;
        return new Page<>(shown.stream().map(view).toList(), more ? cursor.apply(shown.get(shown.size() - 1)) : null);
    }
}
