package org.culvert.platform.account;

import io.quarkus.elytron.security.common.BcryptUtil;
import io.quarkus.runtime.LaunchMode;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * Keeps passwords as bcrypt hashes, and says which ones are taken. Length counts, mixtures of signs do not (NIST SP
 * 800-63B, section 5.1.1.2, from memory); bcrypt reads 72 bytes and no more (from memory), so that longer ones are refused
 * rather than cut.
 */
@ApplicationScoped
class Passwords {
    private static final int SHORTEST = 12;
    private static final int MOST_BYTES = 72;
    private static final int LEAST_COST = 10;

    /** Long enough, and among the first that are tried. */
    private static final Set<String> COMMONPLACE = Set.of(
            "password1234",
            "passwordpassword",
            "123456789012",
            "1234567890123",
            "qwertyuiop12",
            "qwertyuiopas",
            "iloveyou1234",
            "letmein12345",
            "welcome12345",
            "administrator",
            "wildliferescue");

    /** Compared with when there is no such account, so that the time taken does not tell. */
    private final String nobody;

    private final Sql sql;
    private final Clock clock;
    private final int cost;

    /** @param cost two to its power are the rounds of bcrypt; a low one is for tests alone */
    Passwords(Sql sql, Clock clock, @ConfigProperty(name = "culvert.passwords.cost") int cost) {
        if (cost < LEAST_COST && LaunchMode.current() != LaunchMode.TEST) {
            throw new IllegalStateException(
                    "culvert.passwords.cost is " + cost + "; no less than " + LEAST_COST + " will do");
        }
        this.sql = sql;
        this.clock = clock;
        this.cost = cost;
        this.nobody = BcryptUtil.bcryptHash(Secrets.random(), cost);
    }

    /**
     * Refuses a password that would be guessed or cut.
     *
     * @param field what the form or the body calls it
     */
    static void require(String field, String username, String password) {
        String wanted = SHORTEST + " to " + MOST_BYTES + " bytes, not the name and not a commonplace one";
        if (password.codePointCount(0, password.length()) < SHORTEST) {
            throw InvalidException.of(field, "This password is shorter than " + SHORTEST + " characters.", wanted);
        }
        if (password.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            throw InvalidException.of(field, "This password is longer than " + MOST_BYTES + " bytes.", wanted);
        }
        if (password.indexOf('\0') >= 0) {
            throw InvalidException.of(field, "This password holds a NUL.", wanted);
        }
        String low = password.toLowerCase(Locale.ROOT);
        if (low.contains(username.toLowerCase(Locale.ROOT)) || COMMONPLACE.contains(low)) {
            throw InvalidException.of(field, "This password would be among the first to be tried.", wanted);
        }
    }

    void set(UUID accountId, String password) {
        sql.update(
                "insert into passwords (account_id, hash, set_at) values (?, ?, ?)"
                        + " on conflict (account_id) do update set hash = excluded.hash, set_at = excluded.set_at",
                accountId,
                BcryptUtil.bcryptHash(password, cost),
                clock.instant());
    }

    /** Whether it is the password of the account; takes as long where there is no account or no password. */
    boolean fits(@Nullable UUID accountId, String password) {
        Optional<String> hash = accountId == null
                ? Optional.empty()
                : sql.find("select hash from passwords where account_id = ?", row -> row.getString(1), accountId);
        boolean matches = BcryptUtil.matches(password, hash.orElse(nobody));
        return matches && hash.isPresent() && password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
    }
}
