package org.culvert.platform;

import io.quarkus.security.jpa.Password;
import io.quarkus.security.jpa.Roles;
import io.quarkus.security.jpa.UserDefinition;
import io.quarkus.security.jpa.Username;
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
@UserDefinition
public class Account {
    @Id
    @UuidGenerator(style = UuidGenerator.Style.VERSION_7)
    UUID id;

    @Version
    int version;

    @Username
    String username;

    @Password
    String passwordHash;

    /** Comma-separated role names. */
    @Roles
    String roles;

    @Nullable
    UUID memberId;

    @Nullable
    UUID organisationId;

    Instant createdAt;

    @Nullable
    Instant disabledAt;

    protected Account() {}

    Account(String username, String passwordHash, String roles, Instant createdAt) {
        this.username = username;
        this.passwordHash = passwordHash;
        this.roles = roles;
        this.createdAt = createdAt;
    }

    public UUID id() {
        return id;
    }

    public String username() {
        return username;
    }

    public String roles() {
        return roles;
    }

    public @Nullable UUID memberId() {
        return memberId;
    }

    public @Nullable UUID organisationId() {
        return organisationId;
    }
}
