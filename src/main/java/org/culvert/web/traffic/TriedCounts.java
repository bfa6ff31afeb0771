package org.culvert.web.traffic;

import java.util.List;
import java.util.Locale;
import org.culvert.road.traffic.TrafficFileTrial;
import org.culvert.road.traffic.TrafficFileTrial.CountColumn;
import org.culvert.road.traffic.TrafficFileTrial.CountFault;
import org.culvert.road.traffic.TrafficFileTrial.CountRow;
import org.culvert.road.traffic.TrafficFileTrial.CountUnderstood;
import org.jspecify.annotations.Nullable;

/**
 * What a trial of a file of counts found.
 *
 * @param proposals columns that nobody named, or that may be others
 * @param rows the first of them
 */
public record TriedCounts(TrafficFileTrial trial, List<CountColumn> proposals, List<Row> rows) {
    /** A row: what was understood, or what is wrong. */
    public record Row(
            String feature,
            @Nullable CountUnderstood count,
            @Nullable String kilometres,
            List<CountFault> faults) {}

    public static TriedCounts of(TrafficFileTrial trial) {
        return new TriedCounts(
                trial,
                trial.columns().stream()
                        .filter(column -> column.proposed() || !column.others().isEmpty())
                        .toList(),
                trial.rows().stream().map(TriedCounts::row).toList());
    }

    /** Whether there is anything to enter. */
    public boolean isReady() {
        return trial.stillMissing().isEmpty() && trial.understood() > 0;
    }

    private static Row row(CountRow row) {
        CountUnderstood count = row.count();
        return new Row(
                row.feature(),
                count,
                count == null ? null : kilometres(count.fromChainageMetres(), count.toChainageMetres()),
                row.refused());
    }

    static String kilometres(double from, double to) {
        return from == to
                ? String.format(Locale.ROOT, "%.2f", from / 1000)
                : String.format(Locale.ROOT, "%.2f–%.2f", from / 1000, to / 1000);
    }
}
