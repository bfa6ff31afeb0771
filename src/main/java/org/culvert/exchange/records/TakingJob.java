package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.Job;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/**
 * Takes rows of a trial in, all in one transaction: where the database refuses one of them none is taken, and the taking says
 * which it was. It writes by SQL alone: nobody is told as news of what is in it.
 */
@ApplicationScoped
class TakingJob implements Job {
    static final String NAME = "record-taking";

    private static final Logger LOG = Logger.getLogger(TakingJob.class);
    private static final long ROWS_OF_A_STATEMENT = 10_000;
    private static final Duration BETWEEN_NOTES = Duration.ofMillis(500);

    /** SQLSTATE class of what a constraint refuses, and of values that a type cannot hold. */
    private static final String REFUSED = "23";

    private static final String IMPOSSIBLE_VALUE = "22";

    private final DataSource database;
    private final TakingService takings;
    private final Instance<ConstraintSentences> rooms;
    private final Clock clock;

    TakingJob(DataSource database, TakingService takings, @Any Instance<ConstraintSentences> rooms, Clock clock) {
        this.database = database;
        this.takings = takings;
        this.rooms = rooms;
        this.clock = clock;
    }

    @Override
    public String name() {
        return NAME;
    }

    /** A row that the database refuses. */
    private static final class RefusedRow extends Exception {
        private static final long serialVersionUID = 1;
        private final long number;
        private final SQLException refusal;

        RefusedRow(long number, SQLException refusal) {
            super(refusal);
            this.number = number;
            this.refusal = refusal;
        }
    }

    @Override
    public void run(UUID id) {
        TakingService.Order order = takings.begin(id);
        if (order == null) {
            return;
        }
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try {
                take(id, order, connection);
                connection.commit();
            } catch (RefusedRow refused) {
                connection.rollback();
                LOG.infof("Taking %s is refused at row %d: %s", id, refused.number, refused.refusal.getMessage());
                gaveUp(
                        id,
                        "Row " + refused.number + " cannot be kept, and so none was taken: "
                                + sentence(refused.refusal));
                return;
            } catch (SQLException | RuntimeException e) {
                connection.rollback();
                throw e;
            } finally {
                connection.setAutoCommit(true);
            }
            try (Statement look = connection.createStatement()) {
                look.execute("select look_at_records_anew()");
            }
        } catch (SQLException e) {
            throw new IllegalStateException("old records cannot be taken in", e);
        }
    }

    private void take(UUID id, TakingService.Order order, Connection connection) throws SQLException, RefusedRow {
        lock(connection);
        String stale = takings.findStale(order.trialId(), id);
        if (stale != null) {
            gaveUp(id, stale);
            return;
        }
        // As PostgreSQL keeps instants
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        var shared = new TakenRows.Shared(
                now,
                id.getLeastSignificantBits(),
                order.accountId(),
                UUID.randomUUID(),
                order.recordFileId(),
                order.trialId(),
                order.doubtful());
        var rows = new TakenRows(connection, shared);
        rows.enterImport();
        if (order.oneIncident()) {
            rows.joinRowsOfOneAnimal();
        }
        long[] span = rows.span();
        long taken = 0;
        Instant noted = now;
        for (long first = span.length == 0 ? 1 : span[0];
                span.length > 0 && first <= span[1];
                first += ROWS_OF_A_STATEMENT) {
            taken += takeOrName(rows, connection, first, Math.min(span[1], first + ROWS_OF_A_STATEMENT - 1));
            if (Duration.between(noted, clock.instant()).compareTo(BETWEEN_NOTES) >= 0) {
                noted = clock.instant();
                takings.note(id, taken);
            }
        }
        finish(connection, id, shared.importId(), taken);
    }

    /** Where rows of a span are refused, looks for the first of them, to name it. */
    private static long takeOrName(TakenRows rows, Connection connection, long first, long last)
            throws SQLException, RefusedRow {
        Savepoint before = connection.setSavepoint();
        try {
            long taken = rows.take(first, last);
            connection.releaseSavepoint(before);
            return taken;
        } catch (SQLException refusal) {
            String state = refusal.getSQLState();
            if (state == null || !(state.startsWith(REFUSED) || state.startsWith(IMPOSSIBLE_VALUE))) {
                throw refusal;
            }
            connection.rollback(before);
            if (first == last) {
                throw new RefusedRow(first, refusal);
            }
            long middle = first + (last - first) / 2;
            return takeOrName(rows, connection, first, middle) + takeOrName(rows, connection, middle + 1, last);
        }
    }

    private static void lock(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("select pg_advisory_xact_lock(hashtext('record takings'))");
        }
    }

    /** In the same transaction: who begins it again finds that it is done, or nothing of it. */
    private void finish(Connection connection, UUID id, UUID importId, long taken) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement("""
                update record_taking_progress set import_id = ?, rows_taken = ?, rows_entered = ?, finished_at = ?
                where taking_id = ? and finished_at is null
                """)) {
            update.setObject(1, importId);
            update.setLong(2, taken);
            update.setLong(3, taken);
            update.setObject(4, OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC));
            update.setObject(5, id);
            if (update.executeUpdate() != 1) {
                throw new IllegalStateException("the taking was finished by another meanwhile");
            }
        }
    }

    private String sentence(SQLException refusal) {
        ServerErrorMessage told = refusal instanceof PSQLException own ? own.getServerErrorMessage() : null;
        @Nullable String constraint = told == null ? null : told.getConstraint();
        if (constraint != null) {
            Optional<String> known = rooms.stream()
                    .map(room -> room.sentences().get(constraint))
                    .filter(sentence -> sentence != null)
                    .findFirst();
            return known.orElse("the rule " + constraint + " of the database refuses it.");
        }
        return "a value of it cannot be kept as it is.";
    }

    @Override
    public void gaveUp(UUID id, String reason) {
        takings.fail(id, reason);
    }
}
