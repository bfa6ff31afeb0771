package org.culvert.platform.account;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The account that a cookie or a token belongs to. */
record AccountHolder(
        UUID accountId,
        String username,
        Set<String> roles,
        @Nullable UUID memberId,
        @Nullable UUID organisationId) {
    /** What {@link #read} reads, of a table of accounts that is called {@code a}. */
    static final String COLUMNS = "a.id as account_id, a.username, a.roles, a.member_id, a.organisation_id";

    static AccountHolder read(ResultSet row) throws SQLException {
        return new AccountHolder(
                row.getObject("account_id", UUID.class),
                row.getString("username"),
                Arrays.stream(row.getString("roles").split(","))
                        .filter(role -> !role.isBlank())
                        .collect(Collectors.toUnmodifiableSet()),
                row.getObject("member_id", UUID.class),
                row.getObject("organisation_id", UUID.class));
    }
}
