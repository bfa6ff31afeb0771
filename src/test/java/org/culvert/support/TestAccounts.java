package org.culvert.support;

import io.quarkus.arc.Arc;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.platform.Role;
import org.culvert.platform.account.AccountService;
import org.culvert.platform.account.TokenService;
import org.jspecify.annotations.Nullable;

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

    /** Has the account of a role belong to a member or an organisation from now on. */
    static void belong(String role, @Nullable String memberId, @Nullable String organisationId) {
        try (Connection connection =
                        Arc.container().instance(DataSource.class).get().getConnection();
                PreparedStatement update = connection.prepareStatement(
                        "update accounts set member_id = ?::uuid, organisation_id = ?::uuid, version = version + 1"
                                + " where username = ?")) {
            update.setString(1, memberId);
            update.setString(2, organisationId);
            update.setString(3, "test-" + role);
            if (update.executeUpdate() != 1) {
                throw new IllegalStateException("no account of the tests has the role " + role);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
