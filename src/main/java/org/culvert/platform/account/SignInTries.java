package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.culvert.platform.SignInException;

/**
 * Slows down who guesses. After {@value #TRIES_OF_A_NAME} tries that failed a name waits, each further failure twice as
 * long, up to a quarter of an hour; an address waits after {@value #TRIES_OF_A_SOURCE}. A name that nobody has waits
 * alike. Counted in the database, so that all nodes count together.
 */
@ApplicationScoped
class SignInTries {
    static final int TRIES_OF_A_NAME = 10;
    static final int TRIES_OF_A_SOURCE = 30;
    static final int WRONG_TOKENS_OF_A_SOURCE = 60;

    /** What no name digests to; and a source of tokens waits apart from one of passwords. */
    private static final String TOKEN = "\0token ";

    private static final Duration WINDOW = Duration.ofMinutes(15);
    private static final Duration FIRST_WAIT = Duration.ofMinutes(1);

    private final Sql sql;
    private final Clock clock;

    SignInTries(Sql sql, Clock clock) {
        this.sql = sql;
        this.clock = clock;
    }

    /**
     * Counts a try, and refuses one that comes too soon. It counts as wrong until it is said to be right, so that many
     * tries at once are no way around.
     *
     * @return the try, for {@link #end}
     * @throws SignInException with how long to wait
     */
    UUID begin(String username, String source) {
        Instant now = clock.instant();
        UUID id = UUID.randomUUID();
        sql.update(
                "insert into personal.sign_in_tries (id, username, source, tried_at, outcome) values (?, ?, ?, ?, 'begun')",
                id,
                digest(username),
                Secrets.digest(source),
                now);
        waitOfName(username, id, now)
                .filter(until -> until.isAfter(now))
                .or(() -> waitOf(source, id, now, TRIES_OF_A_SOURCE).filter(until -> until.isAfter(now)))
                .ifPresent(until -> {
                    end(id, "refused");
                    throw SignInException.tooManyTries(Duration.between(now, until));
                });
        return id;
    }

    /**
     * Counts a token that did not fit. A token is no word that could be guessed, so one that fits is never made to wait, and
     * a program that was set up wrongly keeps nobody else at its address from signing in.
     *
     * @throws SignInException with how long to wait after too many
     */
    void countWrongToken(String source) {
        Instant now = clock.instant();
        UUID id = UUID.randomUUID();
        waitOf(TOKEN + source, id, now, WRONG_TOKENS_OF_A_SOURCE)
                .filter(until -> until.isAfter(now))
                .ifPresent(until -> {
                    throw SignInException.tooManyTries(Duration.between(now, until));
                });
        sql.update(
                "insert into personal.sign_in_tries (id, username, source, tried_at, outcome) values (?, ?, ?, ?, 'wrong')",
                id,
                digest(TOKEN),
                Secrets.digest(TOKEN + source),
                now);
    }

    void end(UUID id, boolean right) {
        end(id, right ? "right" : "wrong");
    }

    private void end(UUID id, String outcome) {
        sql.update("update personal.sign_in_tries set outcome = ? where id = ?", outcome, id);
    }

    /** Failures since the last success count, so that a typing error a day adds up to nothing. */
    private Optional<Instant> waitOfName(String username, UUID own, Instant now) {
        List<Instant> failed = sql.list(
                "select tried_at from personal.sign_in_tries t where username = ? and tried_at > ? and id <> ?"
                        + " and outcome in ('begun', 'wrong')"
                        + " and not exists (select 1 from personal.sign_in_tries s where s.username = t.username"
                        + " and s.outcome = 'right' and s.tried_at > t.tried_at) order by tried_at desc",
                row -> row.getTimestamp(1).toInstant(),
                digest(username),
                now.minus(WINDOW),
                own);
        int tooMany = failed.size() - TRIES_OF_A_NAME;
        if (tooMany < 0) {
            return Optional.empty();
        }
        Duration wait = tooMany >= 4 ? WINDOW : FIRST_WAIT.multipliedBy(1L << tooMany);
        return Optional.of(failed.get(0).plus(wait));
    }

    private Optional<Instant> waitOf(String source, UUID own, Instant now, int most) {
        List<Instant> failed = sql.list(
                "select tried_at from personal.sign_in_tries where source = ? and tried_at > ? and id <> ?"
                        + " and outcome in ('begun', 'wrong') order by tried_at desc limit " + most,
                row -> row.getTimestamp(1).toInstant(),
                Secrets.digest(source),
                now.minus(WINDOW),
                own);
        return failed.size() < most
                ? Optional.empty()
                : Optional.of(failed.get(failed.size() - 1).plus(WINDOW));
    }

    private static byte[] digest(String username) {
        return Secrets.digest(username.strip().toLowerCase(Locale.ROOT));
    }
}
