package org.culvert.platform;

import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** In whose name the current thread writes: whoever signed in, or whom a job acts for. */
@ApplicationScoped
public class Actor {
    private static final ThreadLocal<@Nullable UUID> ACTING_FOR = new ThreadLocal<>();

    private final SecurityIdentity identity;
    private final AccountService accounts;
    private final Map<String, UUID> idByUsername = new ConcurrentHashMap<>();

    Actor(SecurityIdentity identity, AccountService accounts) {
        this.identity = identity;
        this.accounts = accounts;
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
        return idByUsername.computeIfAbsent(
                identity.getPrincipal().getName(),
                username -> accounts.findId(username)
                        .orElseThrow(() -> new IllegalStateException("the signed-in account is gone")));
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
