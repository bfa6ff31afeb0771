package org.culvert.support;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.TokenService;

/** One account a role, named like the role, for tests of the running server. */
@ApplicationScoped
class TestAccounts {
    static final String PASSWORD = "only for these runs";

    private final AccountService accounts;
    private final TokenService tokens;

    TestAccounts(AccountService accounts, TokenService tokens) {
        this.accounts = accounts;
        this.tokens = tokens;
    }

    static String token(String role) {
        return TokenService.PREFIX + "test-" + role;
    }

    void make(@Observes @Priority(100) StartupEvent event) {
        for (String role : Role.ALL) {
            String username = "test-" + role;
            if (accounts.findId(username).isEmpty()) {
                UUID account = accounts.createAccount(username, PASSWORD, Set.of(role), null, null);
                tokens.keepKnown(account, "tests", token(role), List.of("*:read", "*:write"));
            }
        }
    }
}
