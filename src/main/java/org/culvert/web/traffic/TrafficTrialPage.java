package org.culvert.web.traffic;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.culvert.road.traffic.TrafficFileTrial;
import org.culvert.road.traffic.TrafficFileTrial.CountColumn;
import org.culvert.road.traffic.TrafficFileTrial.CountFault;
import org.culvert.road.traffic.TrafficFileTrial.CountRow;
import org.culvert.road.traffic.TrafficFileTrial.CountUnderstood;
import org.jspecify.annotations.Nullable;

/**
 * What a trial of a file found.
 *
 * @param trial null where the file could not be tried
 * @param columns what each column may hold, with the attribute that is chosen or proposed for it
 * @param attributes of the file that was tried
 * @param rows the first of them
 */
public record TrafficTrialPage(
        @Nullable TrafficFileTrial trial, List<Column> columns, Set<String> attributes, List<Row> rows, int rowsLeft) {
    private static final int SHOWN = 200;

    /** What a column may hold: the parameter that names it. */
    public record Column(String parameter, String chosen, boolean proposed, List<String> others) {}

    /** A row: what was understood, or what is wrong. */
    public record Row(
            String feature,
            @Nullable CountUnderstood count,
            @Nullable String kilometres,
            List<CountFault> faults) {}

    static TrafficTrialPage of(TrafficFileForm form, @Nullable TrafficFileTrial trial) {
        List<Column> columns = new ArrayList<>();
        Set<String> attributes = new LinkedHashSet<>();
        if (trial != null) {
            attributes.addAll(trial.attributes());
            for (CountColumn column : trial.columns()) {
                columns.add(new Column(
                        column.parameter(),
                        Objects.requireNonNullElse(column.attribute(), ""),
                        column.proposed(),
                        column.others()));
            }
        } else {
            if (form.attributes != null) {
                attributes.addAll(form.attributes);
            }
            form.all().keySet().stream()
                    .filter(field -> field.endsWith("Attribute"))
                    .forEach(field -> columns.add(new Column(field, form.typed(field), false, List.of())));
        }
        // What was typed stands, even where this file has no such attribute
        columns.stream().map(Column::chosen).filter(chosen -> !chosen.isEmpty()).forEach(attributes::add);
        List<CountRow> all = trial == null ? List.of() : trial.rows();
        List<Row> rows = all.subList(0, Math.min(SHOWN, all.size())).stream()
                .map(TrafficTrialPage::row)
                .toList();
        int left = trial == null ? 0 : all.size() - rows.size() + trial.rowsNotShown();
        return new TrafficTrialPage(trial, columns, attributes, rows, left);
    }

    /** Whether there is anything to enter. */
    public boolean isReady() {
        return trial != null && trial.stillMissing().isEmpty() && trial.understood() > 0;
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
