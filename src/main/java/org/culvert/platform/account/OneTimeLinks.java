package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Links by which a person sets a password, once. The server sends no mail: whoever made a link hands it over. A newer link
 * of an account ends the older ones.
 */
@ApplicationScoped
class OneTimeLinks {
    /** What a link is for; it works on the page of that alone. */
    enum Purpose {
        invitation(Duration.ofHours(72)),
        reset(Duration.ofHours(2));

        private final Duration lasts;

        Purpose(Duration lasts) {
            this.lasts = lasts;
        }
    }

    /** A link that still works, and whose password it sets. */
    record Standing(UUID id, UUID accountId, String username, Purpose purpose) {}

    private final Sql sql;
    private final Clock clock;

    OneTimeLinks(Sql sql, Clock clock) {
        this.sql = sql;
        this.clock = clock;
    }

    /** The path of a new link. */
    String make(UUID accountId, Purpose purpose, UUID by) {
        Instant now = clock.instant();
        sql.update("update one_time_links set used_at = ? where account_id = ? and used_at is null", now, accountId);
        String secret = Secrets.random();
        sql.update(
                "insert into one_time_links (id, secret, account_id, purpose, created_at, created_by, expires_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?)",
                UUID.randomUUID(),
                Secrets.digest(secret),
                accountId,
                purpose.name(),
                now,
                by,
                now.plus(purpose.lasts));
        return "/" + purpose + "/" + secret;
    }

    Optional<Standing> find(String purpose, String secret) {
        return sql.find(
                "select l.id, l.account_id, a.username, l.purpose from one_time_links l"
                        + " join accounts a on a.id = l.account_id and a.disabled_at is null"
                        + " where l.purpose = ? and l.secret = ? and l.used_at is null and l.expires_at > ?",
                row -> new Standing(
                        row.getObject("id", UUID.class),
                        row.getObject("account_id", UUID.class),
                        row.getString("username"),
                        Purpose.valueOf(row.getString("purpose"))),
                purpose,
                Secrets.digest(secret),
                clock.instant());
    }

    /** Uses a link up; false when somebody was quicker. */
    boolean use(UUID id) {
        return sql.update("update one_time_links set used_at = ? where id = ? and used_at is null", clock.instant(), id)
                == 1;
    }
}
