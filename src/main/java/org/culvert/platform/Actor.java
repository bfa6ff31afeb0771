package org.culvert.platform;

import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/** In whose name the current thread writes: whoever signed in, or whom a job acts for. */
@ApplicationScoped
public class Actor {
    /** Attribute of whoever signed in: the identifier of the account. */
    public static final String ACCOUNT_ID = "account-id";

    private static final ThreadLocal<@Nullable UUID> ACTING_FOR = new ThreadLocal<>();

    private final SecurityIdentity identity;
    private final DataSource database;
    private final Map<String, UUID> idByUsername = new ConcurrentHashMap<>();

    Actor(SecurityIdentity identity, DataSource database) {
        this.identity = identity;
        this.database = database;
    }

    /**
     * The account in whose name records are written now.
     *
     * @throws IllegalStateException when nobody is signed in and no job acts for anyone
     */
    public UUID accountId() {
        UUID actingFor = ACTING_FOR.get();
        if (actingFor != null) {
            return actingFor;
        }
        if (!Arc.container().requestContext().isActive() || identity.isAnonymous()) {
            throw new IllegalStateException("nobody is signed in");
        }
        UUID told = identity.getAttribute(ACCOUNT_ID);
        if (told != null) {
            return told;
        }
        String username = identity.getPrincipal().getName();
        UUID known = idByUsername.get(username);
        if (known == null) {
            known = find(username);
            idByUsername.put(username, known);
        }
        return known;
    }

    /** Plain SQL, since records ask for their author in the middle of a flush. */
    private UUID find(String username) {
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement("select id from accounts where username = ?")) {
            query.setString(1, username);
            try (ResultSet rows = query.executeQuery()) {
                if (!rows.next()) {
                    throw new IllegalStateException("the signed-in account is gone");
                }
                return rows.getObject(1, UUID.class);
            }
        } catch (SQLException e) {
            throw new PersistenceException("the account of whoever signed in cannot be read", e);
        }
    }

    public boolean hasRole(String role) {
        return Arc.container().requestContext().isActive() && identity.hasRole(role);
    }

    /** Runs work in the name of an account, for jobs and imports that no request carries. */
    public static <T> T actFor(UUID accountId, Supplier<T> work) {
        UUID before = ACTING_FOR.get();
        ACTING_FOR.set(accountId);
        try {
            return work.get();
        } finally {
            if (before == null) {
                ACTING_FOR.remove();
            } else {
                ACTING_FOR.set(before);
            }
        }
    }
}
