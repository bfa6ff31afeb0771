package org.culvert.platform.account;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.UuidGenerator;
import org.jspecify.annotations.Nullable;

/** Someone, or some program, that may sign in. */
@Entity
@Table(name = "accounts")
class Account {
    @Id
    @UuidGenerator(style = UuidGenerator.Style.VERSION_7)
    UUID id;

    @Version
    int version;

    String username;

    /** Comma-separated role names. */
    String roles;

    @Nullable
    UUID memberId;

    @Nullable
    UUID organisationId;

    Instant createdAt;

    @Nullable
    Instant disabledAt;

    protected Account() {}

    Account(String username, String roles, Instant createdAt) {
        this.username = username;
        this.roles = roles;
        this.createdAt = createdAt;
    }
}
