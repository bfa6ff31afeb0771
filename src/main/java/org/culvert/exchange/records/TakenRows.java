package org.culvert.exchange.records;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

/**
 * Makes records of the rows of a trial, by SQL over many rows at once: the row as it stood, its place, its incident with the call
 * and the animal, and how it ended. Every statement is given a span of rows, so that what the database remembers until the
 * end of one is bounded.
 */
final class TakenRows {
    /**
     * What all rows share.
     *
     * @param at when they are recorded
     * @param mark tells two takings of one millisecond apart
     * @param doubtful whether rows in doubt are taken too
     */
    record Shared(
            Instant at, long mark, UUID accountId, UUID importId, UUID recordFileId, UUID trialId, boolean doubtful) {}

    /** Of a row without an hour: as late as it can have been reported. */
    private static final String REPORTED =
            "coalesce(%1$s.happened_at, least(%1$s.happened_before - interval '1 second', g.at))";

    /** Sorts of records, in the order in which their identifiers stand: see the function taken_id. */
    private static final String IDENTIFIER = "taken_id(reported, mark, %d, number)";

    /** Of the incident, which is that of another row where several tell of one animal. */
    private static final String INCIDENT = "taken_id(root_reported, mark, 3, root)";

    private static final String CHOSEN =
            """
            with g as (select ?::timestamptz as at, ?::bigint as mark, ?::uuid as account, ?::uuid as import_id,
                              ?::uuid as file_id),
            chosen as (
                select r.*, coalesce(r.incident_row, r.number) as root, %s as reported,
                       case when coalesce(r.incident_row, r.number) = r.number then %s
                            else (select %s from personal.record_trial_rows m
                                  where m.trial_id = r.trial_id and m.number = r.incident_row) end as root_reported,
                       g.at, g.mark, g.account, g.import_id, g.file_id
                from personal.record_trial_rows r cross join g
                where r.trial_id = ? and r.number between ? and ?
                  and (r.verdict = 'right' or (? and r.verdict = 'doubtful')))
            """.formatted(REPORTED.formatted("r"), REPORTED.formatted("r"), REPORTED.formatted("m"));

    private static final Map<String, String> STATEMENTS = statements();

    private final Connection connection;
    private final Shared shared;

    TakenRows(Connection connection, Shared shared) {
        this.connection = connection;
        this.shared = shared;
    }

    private static String id(int sort) {
        return IDENTIFIER.formatted(sort);
    }

    private static Map<String, String> statements() {
        Map<String, String> all = new LinkedHashMap<>();
        all.put("original rows", """
                insert into personal.original_rows (id, record_file_id, row_number, text, happened_at, recorded_at,
                    recorded_by, import_id)
                select %s, file_id, number, original, reported, at, account, import_id from chosen order by number
                """.formatted(id(1)));
        all.put("places", """
                insert into places (id, given_as, verbatim, decimal_latitude, decimal_longitude,
                    coordinate_uncertainty_in_meters, road_link_id, road_name, carriageway, metres_along_link,
                    chainage_metres, chainage_precision_metres, offset_metres, side, road_is_in_doubt, other_roads,
                    recorded_at, recorded_by, import_id)
                select %s, given_as, verbatim, decimal_latitude, decimal_longitude,
                    coordinate_uncertainty_in_meters, road_link_id, road_name, carriageway, metres_along_link,
                    chainage_metres, chainage_precision_metres, offset_metres, side, road_is_in_doubt, other_roads,
                    at, account, import_id
                from chosen where decimal_latitude is not null order by number
                """.formatted(id(2)));
        all.put("incidents", """
                insert into incidents (id, cause, place_id, happened_not_before, reported_at, happened_at, recorded_at,
                    recorded_by, import_id)
                select %s, coalesce(cause, 'unknown'), case when decimal_latitude is not null then %s end,
                    happened_not_before, reported, happened_at, at, account, import_id
                from chosen where root = number order by number
                """.formatted(INCIDENT, id(2)));
        all.put("words", """
                insert into personal.words (id, said, happened_at, recorded_at, recorded_by, import_id)
                select %s, remarks, reported, at, account, import_id
                from chosen where remarks is not null order by number
                """.formatted(id(4)));
        all.put("calls", """
                insert into calls (id, incident_id, words_id, place_id, anyone_hurt, off_the_road, cause, happened_at,
                    recorded_at, recorded_by, import_id)
                select %s, %s, case when remarks is not null then %s end,
                    case when decimal_latitude is not null then %s end, 'unknown', 'unknown', coalesce(cause, 'unknown'),
                    reported, at, account, import_id
                from chosen order by number
                """.formatted(id(5), INCIDENT, id(4), id(2)));
        all.put("reported animals", """
                insert into reported_animals (id, call_id, taxon_id, taxon_group_id, verbatim_identification,
                    identification_verification_status, individual_count, vitality, life_stage, sex, pouch_checked,
                    carcass_signed, recorded_at, recorded_by, import_id)
                select %s, %s, taxon_id, taxon_group_id, verbatim_identification, 'unverified', individual_count,
                    coalesce(vitality, 'unknown'), life_stage, sex, 'unknown', false, at, account, import_id
                from chosen order by number
                """.formatted(id(6), id(5)));
        // After the last call of its own, since a later one opens an incident again
        all.put("closings", """
                insert into closings (id, incident_id, outcome, reason, happened_at, recorded_at, recorded_by, import_id)
                select %s, %s, 'notKnown', 'from old records, which do not tell how it ended here',
                    case when incident_row is null then reported
                         else (select max(coalesce(m.happened_at, least(m.happened_before - interval '1 second', c.at)))
                               from personal.record_trial_rows m
                               where m.trial_id = c.trial_id and m.incident_row = c.number) end,
                    at, account, import_id
                from chosen c where root = number order by number
                """.formatted(id(7), INCIDENT));
        all.put("origins", """
                insert into incident_origins (original_row_id, incident_id)
                select %s, %s from chosen order by number
                """.formatted(id(1), INCIDENT));
        return all;
    }

    /** The file that the records come from. */
    void enterImport() throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("""
                insert into imports (id, kind, file_name, sha256, recorded_at, recorded_by)
                select ?, 'records', file_name, encode(sha256, 'hex'), ?, ? from record_files where id = ?
                """)) {
            insert.setObject(1, shared.importId);
            insert.setObject(2, OffsetDateTime.ofInstant(shared.at, ZoneOffset.UTC));
            insert.setObject(3, shared.accountId);
            insert.setObject(4, shared.recordFileId);
            insert.executeUpdate();
        }
    }

    /** Has rows that perhaps tell of one animal belong to one incident: that of the first of them which is taken. */
    void joinRowsOfOneAnimal() throws SQLException {
        try (PreparedStatement update = connection.prepareStatement("""
                with alike as (
                    select r.number, coalesce(r.one_with, r.number) as first
                    from personal.record_trial_rows r
                    where r.trial_id = ? and (r.verdict = 'right' or (? and r.verdict = 'doubtful'))
                      and (r.one_with is not null
                           or r.number in (select one_with from personal.record_trial_rows
                                           where trial_id = ? and one_with is not null))),
                together as (select number, min(number) over same as root, count(*) over same as many from alike
                             window same as (partition by first))
                update personal.record_trial_rows r set incident_row = t.root
                from together t where r.trial_id = ? and r.number = t.number and t.many > 1
                """)) {
            update.setObject(1, shared.trialId);
            update.setBoolean(2, shared.doubtful);
            update.setObject(3, shared.trialId);
            update.setObject(4, shared.trialId);
            update.executeUpdate();
        }
    }

    /** The first and the last row of the trial; nothing where it has none. */
    long[] span() throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(
                "select min(number), max(number) from personal.record_trial_rows where trial_id = ?")) {
            query.setObject(1, shared.trialId);
            try (ResultSet rows = query.executeQuery()) {
                rows.next();
                long first = rows.getLong(1);
                return rows.wasNull() ? new long[0] : new long[] {first, rows.getLong(2)};
            }
        }
    }

    /**
     * Takes the rows of a span in.
     *
     * @return how many were taken
     */
    long take(long first, long last) throws SQLException {
        long taken = 0;
        for (Map.Entry<String, String> statement : STATEMENTS.entrySet()) {
            try (PreparedStatement insert = connection.prepareStatement(CHOSEN + statement.getValue())) {
                insert.setObject(1, OffsetDateTime.ofInstant(shared.at, ZoneOffset.UTC));
                insert.setLong(2, shared.mark);
                insert.setObject(3, shared.accountId);
                insert.setObject(4, shared.importId);
                insert.setObject(5, shared.recordFileId);
                insert.setObject(6, shared.trialId);
                insert.setLong(7, first);
                insert.setLong(8, last);
                insert.setBoolean(9, shared.doubtful);
                int rows = insert.executeUpdate();
                taken = statement.getKey().equals("calls") ? rows : taken;
            }
        }
        return taken;
    }
}
