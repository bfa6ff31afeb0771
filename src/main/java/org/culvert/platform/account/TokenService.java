package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.jspecify.annotations.Nullable;

/**
 * Tokens of programs: found by their digest, each with the scopes it was made for. A token reaches what its account
 * reaches and its scopes name, and nothing else.
 */
@ApplicationScoped
public class TokenService {
    /** Every token begins with it, so that one that lies about is known for what it is. */
    public static final String PREFIX = "cvt_";

    private static final Pattern SCOPE = Pattern.compile("(\\*|[a-z][a-z-]{0,39}):(read|write)");
    private static final int MOST_OF_AN_ACCOUNT = 500;
    private static final Duration SEEN_ANEW_AFTER = Duration.ofMinutes(1);

    /**
     * A token as shown in lists, without the secret.
     *
     * @param scopes such as {@code hotspot-runs:read}; {@code *:read} reads all that the account may
     */
    public record TokenView(
            UUID id,
            String username,
            String name,
            List<String> scopes,
            @Nullable Instant createdAt,
            @Nullable Instant expiresAt,
            @Nullable Instant lastUsedAt,
            @Nullable Instant revokedAt) {}

    /**
     * A token that was just made.
     *
     * @param token the secret: shown this once and kept nowhere
     */
    public record TokenMade(UUID id, String token) {}

    /** A token that stands, and whose it is. */
    record Standing(UUID id, Set<String> scopes, AccountHolder holder) {}

    private static final String COLUMNS =
            "select t.id, a.username, t.name, t.scopes, t.created_at, t.expires_at, t.last_used_at, t.revoked_at"
                    + " from api_tokens t join accounts a on a.id = t.account_id";

    private final Sql sql;
    private final Clock clock;

    TokenService(Sql sql, Clock clock) {
        this.sql = sql;
        this.clock = clock;
    }

    /**
     * A new token with a secret that nobody could guess.
     *
     * @param askingTokenId the token that asks for it, or null for a person: no token makes one that reaches further or
     *     lasts longer than itself
     */
    @Transactional
    public TokenMade make(
            UUID accountId,
            String name,
            List<String> scopes,
            @Nullable Instant expiresAt,
            @Nullable UUID askingTokenId) {
        Instant now = clock.instant();
        if (askingTokenId != null) {
            requireWithin(askingTokenId, scopes, expiresAt);
        }
        if (expiresAt != null && !expiresAt.isAfter(now)) {
            throw InvalidException.of("expiresAt", "This has passed already.", "an instant to come, or nothing");
        }
        int standing = sql.find(
                        "select count(*) from api_tokens where account_id = ? and revoked_at is null",
                        row -> row.getInt(1),
                        accountId)
                .orElse(0);
        if (standing >= MOST_OF_AN_ACCOUNT) {
            throw InvalidException.of(
                    "name",
                    "This account has " + standing + " tokens.",
                    "fewer than " + MOST_OF_AN_ACCOUNT + ": revoke those that are not used");
        }
        String secret = PREFIX + Secrets.random();
        return new TokenMade(keep(accountId, name, secret, scopes, expiresAt), secret);
    }

    private void requireWithin(UUID askingTokenId, List<String> scopes, @Nullable Instant expiresAt) {
        TokenView asking = sql.find(COLUMNS + " where t.id = ?", TokenService::view, askingTokenId)
                .orElseThrow(() -> new NotFoundException("token", askingTokenId));
        for (String scope : scopes) {
            String reach = scope.substring(scope.indexOf(':') + 1);
            if (!asking.scopes().contains(scope) && !asking.scopes().contains("*:" + reach)) {
                throw InvalidException.of(
                        "scopes",
                        "The token that asks does not reach " + scope + " itself.",
                        "some of " + String.join(", ", asking.scopes()));
            }
        }
        Instant end = asking.expiresAt();
        if (end != null && (expiresAt == null || expiresAt.isAfter(end))) {
            throw InvalidException.of("expiresAt", "The token that asks ends before.", "an instant up to " + end);
        }
    }

    /** Keeps a token whose secret everybody knows: for the invented region and for tests, and never on a real server. */
    @Transactional
    public UUID keepKnown(UUID accountId, String name, String secret, List<String> scopes) {
        return keep(accountId, name, secret, scopes, null);
    }

    private UUID keep(UUID accountId, String name, String secret, List<String> scopes, @Nullable Instant expiresAt) {
        for (String scope : scopes) {
            if (!SCOPE.matcher(scope).matches()) {
                throw InvalidException.of(
                        "scopes",
                        "There is no such scope.",
                        "the first part of an address under /api with :read or :write, such as incidents:read, or *:read");
            }
        }
        UUID id = UUID.randomUUID();
        sql.update(
                "insert into api_tokens (id, secret, account_id, name, scopes, created_at, expires_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?)",
                id,
                Secrets.digest(secret),
                accountId,
                name,
                scopes.stream().sorted().distinct().collect(Collectors.joining(" ")),
                clock.instant(),
                expiresAt);
        return id;
    }

    Optional<Standing> find(String secret) {
        Instant now = clock.instant();
        Optional<Standing> standing = sql.find(
                "select t.id as token_id, t.scopes, " + AccountHolder.COLUMNS
                        + " from api_tokens t join accounts a on a.id = t.account_id"
                        + " where t.secret = ? and t.revoked_at is null and (t.expires_at is null or t.expires_at > ?)"
                        + " and a.disabled_at is null",
                row -> new Standing(
                        row.getObject("token_id", UUID.class),
                        Set.of(row.getString("scopes").split(" ")),
                        AccountHolder.read(row)),
                Secrets.digest(secret),
                now);
        standing.ifPresent(token -> sql.update(
                "update api_tokens set last_used_at = ? where id = ? and (last_used_at is null or last_used_at < ?)",
                now,
                token.id(),
                now.minus(SEEN_ANEW_AFTER)));
        return standing;
    }

    /** Tokens of an account, newest first. */
    @Transactional
    public List<TokenView> listTokens(UUID accountId) {
        return sql.list(COLUMNS + " where t.account_id = ? order by t.created_at desc", TokenService::view, accountId);
    }

    /** Takes a token back; one that is taken back already stays so. */
    @Transactional
    public TokenView revoke(UUID id, UUID by, boolean anyones) {
        sql.update(
                "update api_tokens set revoked_at = ?, revoked_by = ? where id = ? and revoked_at is null"
                        + " and (account_id = ? or ?)",
                clock.instant(),
                by,
                id,
                by,
                anyones);
        return sql.find(COLUMNS + " where t.id = ? and (t.account_id = ? or ?)", TokenService::view, id, by, anyones)
                .orElseThrow(() -> new NotFoundException("token", id));
    }

    @Transactional
    void revokeAll(UUID accountId, UUID by) {
        sql.update(
                "update api_tokens set revoked_at = ?, revoked_by = ? where account_id = ? and revoked_at is null",
                clock.instant(),
                by,
                accountId);
    }

    private static TokenView view(ResultSet row) throws SQLException {
        return new TokenView(
                row.getObject("id", UUID.class),
                row.getString("username"),
                row.getString("name"),
                List.of(row.getString("scopes").split(" ")),
                Sql.instant(row, "created_at"),
                Sql.instant(row, "expires_at"),
                Sql.instant(row, "last_used_at"),
                Sql.instant(row, "revoked_at"));
    }
}
