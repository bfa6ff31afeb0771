package org.culvert.platform;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Makes accounts. Passwords are kept as bcrypt hashes only. */
@ApplicationScoped
public class AccountService {
    /** The account in whose name the server itself writes; the first migration makes it, without usable password or roles. */
    public static final String SYSTEM = "culvert";

    private final AccountRepository accounts;
    private final Clock clock;

    AccountService(AccountRepository accounts, Clock clock) {
        this.accounts = accounts;
        this.clock = clock;
    }

    @Transactional
    public Optional<UUID> findId(String username) {
        return accounts.findByUsername(username).map(Account::id);
    }

    /** Whether anybody can sign in yet. */
    @Transactional
    public boolean hasPeople() {
        return accounts.count("username <> ?1", SYSTEM) > 0;
    }

    @Transactional
    public UUID createAccount(
            String username,
            String password,
            Set<String> roles,
            @Nullable UUID memberId,
            @Nullable UUID organisationId) {
        if (!Role.ALL.containsAll(roles)) {
            throw InvalidException.of("roles", "There is no such role.", "some of " + String.join(", ", Role.ALL));
        }
        var account = new Account(
                username,
                BcryptUtil.bcryptHash(password),
                String.join(",", roles.stream().sorted().toList()),
                clock.instant());
        account.memberId = memberId;
        account.organisationId = organisationId;
        accounts.persistAndFlush(account);
        return account.id();
    }

    /** The server's own account; nobody can sign in with it. */
    @Transactional
    public UUID systemAccount() {
        return accounts.findByUsername(SYSTEM)
                .map(Account::id)
                .orElseThrow(() -> new IllegalStateException("the migrations made no account " + SYSTEM));
    }
}
