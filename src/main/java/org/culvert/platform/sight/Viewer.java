package org.culvert.platform.sight;

import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Whoever asks.
 *
 * @param username of the account, or null for somebody who is not signed in
 * @param accountId of the account
 * @param organisationId the organisation that the account, or the member who uses it, belongs to; an account without one
 *     owns nothing
 * @param memberId the member who uses the account, or null
 */
public record Viewer(
        @Nullable String username,
        @Nullable UUID accountId,
        @Nullable UUID organisationId,
        @Nullable UUID memberId,
        Set<String> roles) {
    /** Somebody who is not signed in. */
    public static final Viewer NOBODY = new Viewer(null, null, null, null, Set.of());

    public boolean hasAny(String... some) {
        for (String role : some) {
            if (roles.contains(role)) {
                return true;
            }
        }
        return false;
    }
}
