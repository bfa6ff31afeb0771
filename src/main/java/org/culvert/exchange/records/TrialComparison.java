package org.culvert.exchange.records;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.exchange.reading.Finding;
import org.culvert.exchange.records.SameAnimals.Likely;
import org.culvert.exchange.records.SameAnimals.Seen;
import org.culvert.exchange.records.TrialRun.FindingCount;
import org.jspecify.annotations.Nullable;

/** Compares the rows of a trial with one another and with the register, and notes what it finds beside them. */
final class TrialComparison {
    private static final int FETCHED_AT_ONCE = 2000;
    private static final int WRITTEN_AT_ONCE = 5000;

    /** Of a row without an hour: as late as it can have been reported. A year alone is near nothing in time. */
    private static final String REPORTED = """
            coalesce(happened_at, case when happened_before - happened_not_before < interval '3 days'
                                       then happened_before - interval '1 second' end)""";

    private final DataSource database;
    private final UUID trialId;
    private final Map<UUID, Integer> kinds = new HashMap<>();

    TrialComparison(DataSource database, UUID trialId) {
        this.database = database;
        this.trialId = trialId;
    }

    /** @param counts how many rows have which finding; those that are found now are counted there */
    void compare(Map<FindingCount, Long> counts) throws SQLException {
        try (Connection writing = database.getConnection()) {
            long repeats = setRepeatsApart(writing);
            if (repeats > 0) {
                counts.put(new FindingCount(Finding.Kind.repeatedInFile, Finding.Weight.note), repeats);
            }
            compareAnimals(writing, counts);
        }
    }

    /** The first of rows that are the same word for word stays. */
    private long setRepeatsApart(Connection connection) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement("""
                update personal.record_trial_rows r
                set verdict = 'apart', one_with = same.first,
                    findings = findings || jsonb_build_array(jsonb_build_object('kind', 'repeatedInFile', 'weight', 'note',
                        'detail', 'Word for word the same as row ' || same.first || '.'))
                from (select number, min(number) over (partition by md5(original), original) as first
                      from personal.record_trial_rows
                      where trial_id = ? and verdict in ('right', 'doubtful')) same
                where r.trial_id = ? and r.number = same.number and same.first < same.number
                """)) {
            update.setObject(1, trialId);
            update.setObject(2, trialId);
            return update.executeUpdate();
        }
    }

    private void compareAnimals(Connection writing, Map<FindingCount, Long> counts) throws SQLException {
        List<Likely> found = new ArrayList<>(WRITTEN_AT_ONCE);
        var animals = new SameAnimals(likely -> {
            found.add(likely);
            Finding.Kind kind = likely.inRegister() ? Finding.Kind.inRegister : Finding.Kind.perhapsOneAnimal;
            counts.merge(new FindingCount(kind, Finding.Weight.doubt), 1L, Long::sum);
        });
        try (Connection reading = database.getConnection()) {
            reading.setAutoCommit(false);
            try (PreparedStatement rowQuery = reading.prepareStatement("""
                            select number, extract(epoch from reported)::bigint, decimal_latitude, decimal_longitude,
                                   coordinate_uncertainty_in_meters, taxon_group_id
                            from (select *, %s as reported from personal.record_trial_rows
                                  where trial_id = ? and verdict in ('right', 'doubtful')) r
                            where reported is not null and decimal_latitude is not null
                            order by reported, number
                            """.formatted(REPORTED));
                    PreparedStatement registerQuery = reading.prepareStatement("""
                            select i.number, extract(epoch from i.reported_at)::bigint, p.decimal_latitude,
                                   p.decimal_longitude, p.coordinate_uncertainty_in_meters,
                                   (select array_agg(distinct a.taxon_group_id)
                                    from calls c join reported_animals a on a.call_id = c.id
                                    where c.incident_id = i.id and a.taxon_group_id is not null)
                            from incidents i join places p on p.id = i.place_id
                            where i.reported_at between
                                  (select min(%1$s) from personal.record_trial_rows where trial_id = ?) - interval '36 hours'
                                  and (select max(%1$s) from personal.record_trial_rows where trial_id = ?)
                                      + interval '36 hours'
                              and not exists (select 1 from incident_joins j
                                              where j.joined_incident_id = i.id and j.undone_at is null)
                            order by i.reported_at, i.number
                            """.formatted(REPORTED))) {
                rowQuery.setFetchSize(FETCHED_AT_ONCE);
                registerQuery.setFetchSize(FETCHED_AT_ONCE);
                rowQuery.setObject(1, trialId);
                registerQuery.setObject(1, trialId);
                registerQuery.setObject(2, trialId);
                try (ResultSet rows = rowQuery.executeQuery();
                        ResultSet register = registerQuery.executeQuery()) {
                    Seen row = nextRow(rows);
                    Seen incident = nextIncident(register);
                    while (row != null) {
                        if (incident != null && incident.at() <= row.at()) {
                            animals.take(incident);
                            incident = nextIncident(register);
                        } else {
                            animals.take(row);
                            row = nextRow(rows);
                        }
                        if (found.size() >= WRITTEN_AT_ONCE) {
                            write(writing, found);
                        }
                    }
                    // What came into the register soon after the last row
                    while (incident != null) {
                        animals.take(incident);
                        incident = nextIncident(register);
                    }
                }
            } finally {
                reading.rollback();
                reading.setAutoCommit(true);
            }
        }
        write(writing, found);
    }

    private @Nullable Seen nextRow(ResultSet rows) throws SQLException {
        if (!rows.next()) {
            return null;
        }
        UUID group = rows.getObject(6, UUID.class);
        return seen(false, rows, group == null ? new int[0] : new int[] {kind(group)});
    }

    private @Nullable Seen nextIncident(ResultSet rows) throws SQLException {
        if (!rows.next()) {
            return null;
        }
        Array groups = rows.getArray(6);
        UUID[] known = groups == null ? new UUID[0] : (UUID[]) groups.getArray();
        int[] kindsHere = new int[known.length];
        for (int i = 0; i < known.length; i++) {
            kindsHere[i] = kind(known[i]);
        }
        return seen(true, rows, kindsHere);
    }

    private static Seen seen(boolean inRegister, ResultSet rows, int[] kindsHere) throws SQLException {
        return new Seen(
                inRegister,
                rows.getLong(1),
                rows.getLong(2),
                rows.getDouble(3),
                rows.getDouble(4),
                rows.getDouble(5),
                kindsHere);
    }

    private int kind(UUID group) {
        return kinds.computeIfAbsent(group, none -> kinds.size());
    }

    private void write(Connection connection, List<Likely> found) throws SQLException {
        if (found.isEmpty()) {
            return;
        }
        Long[] numbers = new Long[found.size()];
        Long[] firsts = new Long[found.size()];
        String[] kindsOfFinding = new String[found.size()];
        String[] details = new String[found.size()];
        String[] wanted = new String[found.size()];
        for (int i = 0; i < numbers.length; i++) {
            Likely one = found.get(i);
            numbers[i] = one.number();
            firsts[i] = one.inRegister() ? null : Long.valueOf(one.other());
            kindsOfFinding[i] = one.inRegister() ? "inRegister" : "perhapsOneAnimal";
            String apart = String.format(Locale.ROOT, "%.0f m and %.1f hours", one.metresApart(), one.hoursApart());
            details[i] = one.inRegister()
                    ? "Incident " + one.other() + " of the register is " + apart + " away, and may be the same."
                    : "Perhaps it tells of the animal of row " + one.other() + ": a report of that is " + apart
                            + " away.";
            wanted[i] = one.inRegister()
                    ? "leave it out, or take it and join the two"
                    : "take them as calls of one incident, or as incidents of their own";
        }
        found.clear();
        // A row may be found twice at once, in the file and in the register: each is a finding.
        try (PreparedStatement update = connection.prepareStatement("""
                update personal.record_trial_rows r
                set verdict = 'doubtful', one_with = coalesce(p.first, r.one_with), findings = r.findings || p.findings
                from (select number, max(first) as first,
                             jsonb_agg(jsonb_build_object('kind', kind, 'weight', 'doubt', 'detail', detail, 'wanted', wanted))
                                 as findings
                      from unnest(?::bigint[], ?::bigint[], ?::text[], ?::text[], ?::text[])
                          as given (number, first, kind, detail, wanted)
                      group by number) p
                where r.trial_id = ? and r.number = p.number
                """)) {
            update.setArray(1, connection.createArrayOf("bigint", numbers));
            update.setArray(2, connection.createArrayOf("bigint", firsts));
            update.setArray(3, connection.createArrayOf("text", kindsOfFinding));
            update.setArray(4, connection.createArrayOf("text", details));
            update.setArray(5, connection.createArrayOf("text", wanted));
            update.setObject(6, trialId);
            update.executeUpdate();
        }
    }
}
