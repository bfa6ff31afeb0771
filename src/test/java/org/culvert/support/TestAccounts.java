package org.culvert.support;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Set;
import org.culvert.platform.AccountService;
import org.culvert.platform.Role;

/** One account a role, named like the role, for tests of the running server. */
@ApplicationScoped
class TestAccounts {
    static final String PASSWORD = "only for tests";

    private final AccountService accounts;

    TestAccounts(AccountService accounts) {
        this.accounts = accounts;
    }

    void make(@Observes @Priority(100) StartupEvent event) {
        for (String role : Role.ALL) {
            String username = "test-" + role;
            if (accounts.findId(username).isEmpty()) {
                accounts.createAccount(username, PASSWORD, Set.of(role), null, null);
            }
        }
    }
}
