package org.culvert.platform.account;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.Actor;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.Role;
import org.jspecify.annotations.Nullable;

/** Makes accounts, disables them, and lets people set and change their passwords. */
@ApplicationScoped
public class AccountService {
    /** The account in whose name the server itself writes; the first migration makes it, without password or roles. */
    public static final String SYSTEM = "culvert";

    /**
     * An account as administrators see it.
     *
     * @param hasPassword whether its person has set one; a program's account needs none
     */
    public record AccountView(
            UUID id,
            String username,
            List<String> roles,
            @Nullable UUID memberId,
            @Nullable UUID organisationId,
            Instant createdAt,
            @Nullable Instant disabledAt,
            boolean hasPassword) {}

    private final AccountRepository accounts;
    private final Passwords passwords;
    private final Sessions sessions;
    private final TokenService tokens;
    private final OneTimeLinks links;
    private final Sql sql;
    private final Actor actor;
    private final Clock clock;

    AccountService(
            AccountRepository accounts,
            Passwords passwords,
            Sessions sessions,
            TokenService tokens,
            OneTimeLinks links,
            Sql sql,
            Actor actor,
            Clock clock) {
        this.accounts = accounts;
        this.passwords = passwords;
        this.sessions = sessions;
        this.tokens = tokens;
        this.links = links;
        this.sql = sql;
        this.actor = actor;
        this.clock = clock;
    }

    @Transactional
    public Optional<UUID> findId(String username) {
        return accounts.findByUsername(username).map(account -> account.id);
    }

    /** Whether anybody can sign in yet. */
    @Transactional
    public boolean hasPeople() {
        return accounts.count("username <> ?1", SYSTEM) > 0;
    }

    /**
     * Makes an account.
     *
     * @param password its password, or null where its person shall set one by a link, or where a program needs none
     */
    @Transactional
    public UUID createAccount(
            String username,
            @Nullable String password,
            Set<String> roles,
            @Nullable UUID memberId,
            @Nullable UUID organisationId) {
        var account = new Account(username, joined(roles), clock.instant());
        if (password != null) {
            Passwords.require("password", username, password);
        }
        account.memberId = memberId;
        account.organisationId = organisationId;
        accounts.persistAndFlush(account);
        if (password != null) {
            passwords.set(account.id, password);
        }
        return account.id;
    }

    /** The server's own account; nobody can sign in with it. */
    @Transactional
    public UUID systemAccount() {
        return findId(SYSTEM).orElseThrow(() -> new IllegalStateException("the migrations made no account " + SYSTEM));
    }

    @Transactional
    public AccountView getAccount(UUID id) {
        return view(require(id));
    }

    /** Accounts by the time that they were made. */
    @Transactional
    public Page<AccountView> listAccounts(int limit, @Nullable UUID after) {
        List<Account> rows = accounts.find("username <> ?1 and (?2 is null or id > ?2) order by id", SYSTEM, after)
                .page(0, limit + 1)
                .list();
        return Page.of(rows, limit, this::view, row -> row.id.toString());
    }

    /** A link by which the person of an account sets the first password; its path, shown this once. */
    @Transactional
    public String invite(UUID id) {
        return links.make(requireEnabled(id).id, OneTimeLinks.Purpose.invitation, actor.accountId());
    }

    /** A link by which the person of an account sets another password; its path, shown this once. */
    @Transactional
    public String makeResetLink(UUID id) {
        return links.make(requireEnabled(id).id, OneTimeLinks.Purpose.reset, actor.accountId());
    }

    /** Whose password a link sets, if it still works. */
    @Transactional
    public Optional<String> findUsernameOfLink(String purpose, String secret) {
        return links.find(purpose, secret).map(OneTimeLinks.Standing::username);
    }

    /** Sets a password by a link, which it uses up; all sessions of the account end. */
    @Transactional
    public void setPasswordByLink(String purpose, String secret, String password) {
        OneTimeLinks.Standing link = links.find(purpose, secret)
                .orElseThrow(() -> new ConflictException(
                        "This link was used, has run out, or was replaced by a newer one. Ask for another."));
        Passwords.require("password", link.username(), password);
        if (!links.use(link.id())) {
            throw new ConflictException("This link was used a moment ago.");
        }
        passwords.set(link.accountId(), password);
        sessions.endAll(link.accountId());
    }

    /** Sets another password for an account whose person has just shown the one so far; every session of it ends. */
    @Transactional
    public void changePassword(UUID id, String password) {
        Account account = require(id);
        Passwords.require("password", account.username, password);
        passwords.set(id, password);
        sessions.endAll(id);
    }

    /** Nobody signs in with the account any more: its sessions end, its tokens are taken back. */
    @Transactional
    public AccountView disable(UUID id) {
        Account account = require(id);
        if (id.equals(actor.accountId())) {
            throw new ConflictException("Nobody disables the account that they are using: let another administrator.");
        }
        requireAnotherAdministrator(account);
        if (account.disabledAt == null) {
            account.disabledAt = clock.instant();
            accounts.flush();
        }
        sessions.endAll(id);
        tokens.revokeAll(id, actor.accountId());
        return view(account);
    }

    /** Lets an account be used again; its tokens stay taken back. */
    @Transactional
    public AccountView enable(UUID id) {
        Account account = require(id);
        account.disabledAt = null;
        accounts.flush();
        return view(account);
    }

    /** Gives an account other roles; they hold from the next request on. */
    @Transactional
    public AccountView setRoles(UUID id, Set<String> roles) {
        Account account = require(id);
        if (!roles.contains(Role.ADMIN)) {
            requireAnotherAdministrator(account);
        }
        account.roles = joined(roles);
        accounts.flush();
        return view(account);
    }

    /** The roles of the last administrator are not taken: nobody could give them back. */
    private void requireAnotherAdministrator(Account account) {
        long others = sql.find(
                        "select count(*) from accounts where id <> ? and disabled_at is null"
                                + " and ? = any (string_to_array(roles, ','))",
                        row -> row.getLong(1),
                        account.id,
                        Role.ADMIN)
                .orElse(0L);
        if (others == 0) {
            throw new ConflictException("That is the last administrator: make another one first.");
        }
    }

    private static String joined(Set<String> roles) {
        if (!Role.ALL.containsAll(roles)) {
            throw InvalidException.of("roles", "There is no such role.", "some of " + String.join(", ", Role.ALL));
        }
        return String.join(",", roles.stream().sorted().toList());
    }

    private Account require(UUID id) {
        return accounts.findByIdOptional(id)
                .filter(account -> !account.username.equals(SYSTEM))
                .orElseThrow(() -> new NotFoundException("account", id));
    }

    private Account requireEnabled(UUID id) {
        Account account = require(id);
        if (account.disabledAt != null) {
            throw new ConflictException("That account is disabled: enable it first.");
        }
        return account;
    }

    private AccountView view(Account account) {
        boolean hasPassword = sql.find("select 1 from passwords where account_id = ?", row -> row.getInt(1), account.id)
                .isPresent();
        return new AccountView(
                account.id,
                account.username,
                Arrays.stream(account.roles.split(","))
                        .filter(role -> !role.isBlank())
                        .toList(),
                account.memberId,
                account.organisationId,
                account.createdAt,
                account.disabledAt,
                hasPassword);
    }
}
