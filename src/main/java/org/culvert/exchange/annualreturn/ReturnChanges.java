package org.culvert.exchange.annualreturn;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What changed of a signed return since it, or its last supplement, was signed: nothing else. A new name of a holder or of a
 * kind of animal is no change.
 *
 * @param since what was recorded until then was counted before
 * @param knownAt what was recorded until then is counted now
 */
public record ReturnChanges(
        UUID returnId,
        Instant since,
        Instant knownAt,
        List<ChangedLine> lines,
        List<ChangedTransfer> transfers,
        List<ChangedDoubt> doubts,
        List<ChangedLeftOut> leftOut) {

    /** @param before null where it is new; after null where it is gone; likewise the others */
    public record ChangedLine(ReturnDraft.@Nullable ReturnLine before, ReturnDraft.@Nullable ReturnLine after) {}

    public record ChangedTransfer(
            ReturnDraft.@Nullable ReturnTransfer before, ReturnDraft.@Nullable ReturnTransfer after) {}

    public record ChangedDoubt(ReturnDraft.@Nullable ReturnDoubt before, ReturnDraft.@Nullable ReturnDoubt after) {}

    public record ChangedLeftOut(
            ReturnDraft.@Nullable ReturnLeftOut before, ReturnDraft.@Nullable ReturnLeftOut after) {}

    /** All rows of a return, as they were counted. */
    record Counted(
            List<ReturnDraft.ReturnLine> lines,
            List<ReturnDraft.ReturnTransfer> transfers,
            List<ReturnDraft.ReturnDoubt> doubts,
            List<ReturnDraft.ReturnLeftOut> leftOut) {
        static Counted of(ReturnDraft draft) {
            return new Counted(draft.lines(), draft.transfers(), draft.doubts(), draft.leftOut());
        }
    }

    static ReturnChanges between(UUID returnId, Instant since, Instant knownAt, Counted before, Counted after) {
        return new ReturnChanges(
                returnId,
                since,
                knownAt,
                compare(
                        before.lines(),
                        after.lines(),
                        line -> List.of(line.taxonId(), line.kind()),
                        line -> List.of(line.opening(), line.cameInBy(), line.wentOutBy(), line.closing()),
                        ChangedLine::new),
                compare(
                        before.transfers(),
                        after.transfers(),
                        row -> List.of(row.caseNumber(), row.kind(), row.direction(), row.at()),
                        row -> List.of(
                                row.taxonId(),
                                row.count(),
                                text(row.otherMemberId()),
                                text(row.otherOrganisationId()),
                                text(row.otherLicence()),
                                text(row.otherLicenceOf()),
                                text(row.otherLicenceJurisdiction())),
                        ChangedTransfer::new),
                compare(
                        before.doubts(),
                        after.doubts(),
                        row -> List.of(row.taxonId(), row.kind(), row.direction(), row.why()),
                        row -> List.of(row.count(), row.cases()),
                        ChangedDoubt::new),
                compare(
                        before.leftOut(),
                        after.leftOut(),
                        row -> List.of(row.taxonId(), row.kind()),
                        row -> List.of(row.count(), row.cases()),
                        ChangedLeftOut::new));
    }

    boolean isNothing() {
        return lines.isEmpty() && transfers.isEmpty() && doubts.isEmpty() && leftOut.isEmpty();
    }

    private static String text(@Nullable Object value) {
        return Objects.toString(value, "");
    }

    /**
     * @param key what makes two rows the same row; rows that share one, such as eggs that went at one time, are paired in
     *     their order
     * @param content what of it counts as a change
     */
    private static <T, C> List<C> compare(
            List<T> before,
            List<T> after,
            Function<T, List<?>> key,
            Function<T, List<?>> content,
            BiFunction<@Nullable T, @Nullable T, C> changed) {
        Map<List<Object>, T> was = byKey(before, key);
        Map<List<Object>, T> is = byKey(after, key);
        List<C> changes = new ArrayList<>();
        was.forEach((which, row) -> {
            T now = is.get(which);
            if (now == null || !content.apply(row).equals(content.apply(now))) {
                changes.add(changed.apply(row, now));
            }
        });
        is.forEach((which, row) -> {
            if (!was.containsKey(which)) {
                changes.add(changed.apply(null, row));
            }
        });
        return List.copyOf(changes);
    }

    private static <T> Map<List<Object>, T> byKey(List<T> rows, Function<T, List<?>> key) {
        Map<List<Object>, T> byKey = new LinkedHashMap<>();
        for (T row : rows) {
            for (int twin = 0; ; twin++) {
                List<Object> which = new ArrayList<>(key.apply(row));
                which.add(twin);
                if (byKey.putIfAbsent(which, row) == null) {
                    break;
                }
            }
        }
        return byKey;
    }
}
