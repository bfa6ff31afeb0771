package org.culvert.platform.sight;

import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.RequestScoped;
import jakarta.persistence.PersistenceException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/** Says who asks, once a request. */
@ApplicationScoped
public class Viewers {
    /** What is known of the asker and of the records asked for, for as long as a request lasts. */
    @RequestScoped
    static class Known {
        @Nullable
        Viewer viewer;

        SightTable.@Nullable HeldPath askedAbout;

        final Map<String, Map<UUID, Boolean>> own = new HashMap<>();
        final Map<String, Map<UUID, Double>> strictness = new HashMap<>();

        void tell(Viewer asker) {
            viewer = asker;
        }

        @Nullable
        Viewer viewer() {
            return viewer;
        }

        void askAbout(SightTable.HeldPath record) {
            askedAbout = record;
        }

        SightTable.@Nullable HeldPath askedAbout() {
            return askedAbout;
        }

        Map<UUID, Boolean> own(String resource) {
            return own.computeIfAbsent(resource, name -> new HashMap<>());
        }

        Map<UUID, Double> strictness(String resource) {
            return strictness.computeIfAbsent(resource, name -> new HashMap<>());
        }
    }

    private static final String ACCOUNT = """
            select a.id, coalesce(a.organisation_id, m.organisation_id), m.id
            from accounts a
            left join members m on m.id = a.member_id and (m.left_on is null or m.left_on > current_date)
            where a.username = ?
            """;

    private final SecurityIdentity identity;
    private final Known known;
    private final DataSource database;

    Viewers(SecurityIdentity identity, Known known, DataSource database) {
        this.identity = identity;
        this.known = known;
        this.database = database;
    }

    /** Whoever asks in the current request; nobody where there is none. */
    public Viewer current() {
        if (!Arc.container().requestContext().isActive()) {
            return Viewer.NOBODY;
        }
        Viewer told = known.viewer();
        if (told == null) {
            told = identity.isAnonymous()
                    ? Viewer.NOBODY
                    : read(identity.getPrincipal().getName(), Set.copyOf(identity.getRoles()));
            known.tell(told);
        }
        return told;
    }

    /** Plain SQL, since representations are written outside transactions. */
    private Viewer read(String username, Set<String> roles) {
        try (Connection connection = database.getConnection();
                PreparedStatement query = connection.prepareStatement(ACCOUNT)) {
            query.setString(1, username);
            try (ResultSet rows = query.executeQuery()) {
                if (!rows.next()) {
                    throw new IllegalStateException("the signed-in account is gone");
                }
                return new Viewer(
                        username,
                        rows.getObject(1, UUID.class),
                        rows.getObject(2, UUID.class),
                        rows.getObject(3, UUID.class),
                        roles);
            }
        } catch (SQLException e) {
            throw new PersistenceException("the account of whoever signed in cannot be read", e);
        }
    }
}
