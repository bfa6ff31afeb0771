package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Sessions of people, found by the digest of their cookie. One lasts a day and ends after two hours without a request. */
@ApplicationScoped
public class Sessions {
    static final Duration LONGEST = Duration.ofHours(24);
    static final Duration LONGEST_IDLE = Duration.ofHours(2);
    private static final Duration SEEN_ANEW_AFTER = Duration.ofMinutes(1);

    /** A session as its person sees it. */
    public record SessionView(
            UUID id, @Nullable Instant createdAt, @Nullable Instant lastSeenAt) {}

    /** A session that has just begun; the secret goes into the cookie and is kept nowhere. */
    record Begun(UUID id, String secret) {}

    /** A session that stands, and whose it is. */
    record Standing(UUID id, String formSecret, AccountHolder holder) {}

    private final Sql sql;
    private final Clock clock;

    Sessions(Sql sql, Clock clock) {
        this.sql = sql;
        this.clock = clock;
    }

    Begun begin(UUID accountId) {
        Instant now = clock.instant();
        var begun = new Begun(UUID.randomUUID(), Secrets.random());
        sql.update(
                "insert into sessions (id, secret, account_id, form_secret, created_at, last_seen_at, expires_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?)",
                begun.id(),
                Secrets.digest(begun.secret()),
                accountId,
                Secrets.random(),
                now,
                now,
                now.plus(LONGEST));
        return begun;
    }

    Optional<Standing> find(String secret) {
        Instant now = clock.instant();
        Optional<Standing> standing = sql.find(
                "select s.id as session_id, s.form_secret, " + AccountHolder.COLUMNS
                        + " from sessions s join accounts a on a.id = s.account_id"
                        + " where s.secret = ? and s.ended_at is null and s.expires_at > ? and s.last_seen_at > ?"
                        + " and a.disabled_at is null",
                row -> new Standing(
                        row.getObject("session_id", UUID.class), row.getString("form_secret"), AccountHolder.read(row)),
                Secrets.digest(secret),
                now,
                now.minus(LONGEST_IDLE));
        standing.ifPresent(one -> sql.update(
                "update sessions set last_seen_at = ? where id = ? and last_seen_at < ?",
                now,
                one.id(),
                now.minus(SEEN_ANEW_AFTER)));
        return standing;
    }

    List<SessionView> list(UUID accountId) {
        Instant now = clock.instant();
        return sql.list(
                "select id, created_at, last_seen_at from sessions where account_id = ? and ended_at is null"
                        + " and expires_at > ? and last_seen_at > ? order by last_seen_at desc",
                row -> new SessionView(
                        row.getObject("id", UUID.class),
                        Sql.instant(row, "created_at"),
                        Sql.instant(row, "last_seen_at")),
                accountId,
                now,
                now.minus(LONGEST_IDLE));
    }

    /** Ends a session of an account; one of somebody else is not touched. */
    void end(UUID accountId, UUID id) {
        sql.update(
                "update sessions set ended_at = ? where id = ? and account_id = ? and ended_at is null",
                clock.instant(),
                id,
                accountId);
    }

    void endAll(UUID accountId) {
        sql.update(
                "update sessions set ended_at = ? where account_id = ? and ended_at is null",
                clock.instant(),
                accountId);
    }
}
