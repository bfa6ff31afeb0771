package org.culvert.exchange.event;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.Base64;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.ConstraintSentences;
import org.culvert.platform.InvalidException;
import org.culvert.platform.NotFoundException;
import org.culvert.platform.Page;
import org.culvert.platform.ledger.RecordView;
import org.culvert.platform.ledger.RecordViews;
import org.culvert.platform.ledger.RowTag;
import org.culvert.platform.ledger.TagSource;
import org.jspecify.annotations.Nullable;

/** Who is told of what, and what became of each message. */
@ApplicationScoped
public class SubscriptionService {
    private static final int SECRET_BYTES = 32;
    private static final int MOST_STANDING = 200;
    private static final SecureRandom RANDOM = new SecureRandom();

    /**
     * Who is to be told.
     *
     * @param address where messages are sent, by POST
     * @param purpose whose it is and what for
     * @param types such as {@code culvert.case.opened}
     */
    public record SubscriptionEntry(
            @NotBlank @Size(max = 2000) String address,
            @NotBlank @Size(max = 2000) String purpose,
            @NotEmpty @Size(max = 100) List<@NotNull @Size(max = 200) String> types) {}

    public record EventSubscriptionView(
            UUID id,
            String address,
            String purpose,
            List<String> types,
            @Nullable Instant endedAt,
            @Nullable String endedBecause,
            RecordView record) {}

    /**
     * A subscription that was just made.
     *
     * @param secret with which messages are signed, in base64 behind its prefix: shown this once
     */
    public record SubscriptionMade(UUID id, String secret) {}

    /**
     * What became of one message.
     *
     * @param subject the record below {@code /api}
     * @param state {@code waiting}, {@code delivered} or {@code givenUp}
     * @param lastStatus of the last answer; null: none came
     * @param lastWords what went wrong last
     */
    public record EventDeliveryView(
            UUID id,
            UUID eventId,
            String type,
            String subject,
            Instant at,
            String state,
            int attempts,
            @Nullable Instant nextAttemptAt,
            @Nullable Instant deliveredAt,
            @Nullable Integer lastStatus,
            @Nullable String lastWords) {}

    @ApplicationScoped
    static class Subscriptions implements PanacheRepositoryBase<EventSubscription, UUID> {}

    @ApplicationScoped
    static class Sentences implements ConstraintSentences {
        @Override
        public Map<String, String> sentences() {
            return Map.of(
                    "ending_a_subscription_has_time_and_reason",
                    "Ending a subscription needs a time and a reason.",
                    "an_event_is_told_to_each_once",
                    "That event was told there already.",
                    "a_delivery_is_due_or_over",
                    "A message waits, was delivered, or was given up.");
        }
    }

    @Produces
    @Singleton
    static TagSource tag(EntityManager entities, SubscriptionService service) {
        return new RowTag("event-subscription", "event_subscriptions", entities, service::getSubscription);
    }

    private final Subscriptions subscriptions;
    private final Addresses addresses;
    private final RecordViews records;
    private final EntityManager entities;
    private final Clock clock;

    SubscriptionService(
            Subscriptions subscriptions,
            Addresses addresses,
            RecordViews records,
            EntityManager entities,
            Clock clock) {
        this.subscriptions = subscriptions;
        this.addresses = addresses;
        this.records = records;
        this.entities = entities;
        this.clock = clock;
    }

    /** From now on that address is told. */
    @Transactional
    public SubscriptionMade subscribe(SubscriptionEntry entry) {
        addresses.require(entry.address());
        Set<String> types = new LinkedHashSet<>(entry.types());
        List<String> known = EventType.words();
        for (String type : types) {
            if (!known.contains(type)) {
                throw InvalidException.of("types", "Nothing is told of " + type + ".", String.join(", ", known));
            }
        }
        if (subscriptions.count("endedAt is null") >= MOST_STANDING) {
            throw new ConflictException("There are " + MOST_STANDING + " subscriptions already: end one first.");
        }
        var row = new EventSubscription(entry.address(), entry.purpose(), List.copyOf(types));
        subscriptions.persistAndFlush(row);
        byte[] secret = new byte[SECRET_BYTES];
        RANDOM.nextBytes(secret);
        entities.createNativeQuery("insert into event_secrets (subscription_id, secret) values (?1, ?2)")
                .setParameter(1, row.id())
                .setParameter(2, secret)
                .executeUpdate();
        return new SubscriptionMade(row.id(), "whsec_" + Base64.getEncoder().encodeToString(secret));
    }

    @Transactional
    public EventSubscriptionView getSubscription(UUID id) {
        return view(require(id));
    }

    /** Subscriptions, newest first, those that have ended among them. */
    @Transactional
    public Page<EventSubscriptionView> listSubscriptions(int limit, @Nullable UUID before) {
        List<EventSubscription> rows = subscriptions
                .find("?1 is null or id < ?1 order by id desc", before)
                .page(0, limit + 1)
                .list();
        records.lookUp(rows);
        return Page.of(rows, limit, this::view, row -> row.id().toString());
    }

    /** Nothing more is sent there, not even what waits. */
    @Transactional
    public EventSubscriptionView end(UUID id, String reason) {
        EventSubscription row = require(id);
        row.end(clock.instant(), reason);
        subscriptions.flush();
        entities.createNativeQuery("update event_deliveries set next_attempt_at = null, given_up_at = :now,"
                        + " last_words = 'The subscription has ended.'"
                        + " where subscription_id = :id and next_attempt_at is not null")
                .setParameter("now", clock.instant())
                .setParameter("id", id)
                .executeUpdate();
        return view(row);
    }

    /** Messages of a subscription, those sent last first. */
    @Transactional
    public List<EventDeliveryView> listDeliveries(UUID id, int limit) {
        require(id);
        List<?> rows = entities.createNativeQuery("""
                        select d.id, e.id, e.type, e.subject, e.at, d.attempts, d.next_attempt_at, d.delivered_at, d.given_up_at,
                               d.last_status, d.last_words
                        from event_deliveries d join events e on e.id = d.event_id
                        where d.subscription_id = ?1 order by e.at desc, e.id limit ?2
                        """)
                .setParameter(1, id)
                .setParameter(2, limit)
                .getResultList();
        return rows.stream().map(row -> delivery((Object[]) row)).toList();
    }

    private static EventDeliveryView delivery(Object[] row) {
        return new EventDeliveryView(
                (UUID) row[0],
                (UUID) row[1],
                (String) row[2],
                (String) row[3],
                (Instant) row[4],
                row[6] != null ? "waiting" : row[7] != null ? "delivered" : "givenUp",
                (Integer) row[5],
                (Instant) row[6],
                (Instant) row[7],
                (Integer) row[9],
                (String) row[10]);
    }

    private EventSubscription require(UUID id) {
        return subscriptions.findByIdOptional(id).orElseThrow(() -> new NotFoundException("event subscription", id));
    }

    private EventSubscriptionView view(EventSubscription row) {
        return new EventSubscriptionView(
                row.id(), row.address, row.purpose, row.types, row.endedAt, row.endedBecause, records.of(row));
    }
}
