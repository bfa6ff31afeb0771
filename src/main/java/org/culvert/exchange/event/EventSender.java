package org.culvert.exchange.event;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Sends what waits. Each node looks every few seconds; a message is claimed in the database, so that two nodes do not send it at
 * once, and one whose node dies is sent again. So it may come twice: its identifier tells.
 */
@ApplicationScoped
class EventSender {
    private static final Logger LOG = Logger.getLogger(EventSender.class);
    private static final int AT_ONCE = 20;
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    /** Longer than a round of messages takes at the worst. */
    private static final Duration CLAIMED_FOR = PATIENCE.multipliedBy(AT_ONCE + 2L);

    /** After the first failure, the second, and so on; then it is given up. */
    private static final List<Duration> AFTER = List.of(
            Duration.ofSeconds(10),
            Duration.ofMinutes(1),
            Duration.ofMinutes(5),
            Duration.ofMinutes(30),
            Duration.ofHours(2),
            Duration.ofHours(6),
            Duration.ofHours(12),
            Duration.ofHours(24));

    private record Due(
            UUID deliveryId,
            UUID eventId,
            String type,
            String subject,
            Instant at,
            String address,
            byte[] secret,
            int attempts) {}

    private record Answer(
            @Nullable Integer status, @Nullable String words) {
        boolean isTaken() {
            return status != null && status >= 200 && status < 300;
        }
    }

    private final Addresses addresses;
    private final EntityManager entities;
    private final Clock clock;
    private final Duration every;
    private final HttpClient http = HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private @Nullable ScheduledExecutorService clockwork;

    EventSender(
            Addresses addresses,
            EntityManager entities,
            Clock clock,
            @ConfigProperty(name = "culvert.events.every", defaultValue = "5s") Duration every) {
        this.addresses = addresses;
        this.entities = entities;
        this.clock = clock;
        this.every = every;
    }

    void start(@Observes @Priority(2100) StartupEvent event) {
        clockwork = Executors.newSingleThreadScheduledExecutor(work -> {
            var thread = new Thread(work, "events");
            thread.setDaemon(true);
            return thread;
        });
        clockwork.scheduleWithFixedDelay(this::sendQuietly, every.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
    }

    void stop(@Observes ShutdownEvent event) {
        if (clockwork != null) {
            clockwork.shutdownNow();
        }
    }

    /** A round that fails, as while the database is away, is no reason for none to follow. */
    private void sendQuietly() {
        try {
            send();
        } catch (RuntimeException e) {
            LOG.warnf("Messages wait: %s", e.getMessage());
        }
    }

    /** Sends all that is due, and says how many there were. */
    int send() {
        int sent = 0;
        List<Due> due;
        do {
            due = QuarkusTransaction.requiringNew().call(this::claim);
            for (Due one : due) {
                Answer answer = post(one);
                QuarkusTransaction.requiringNew().run(() -> note(one, answer));
                sent++;
            }
        } while (due.size() == AT_ONCE);
        return sent;
    }

    private List<Due> claim() {
        Instant now = clock.instant();
        List<?> rows = entities.createNativeQuery("""
                        with due as (
                            select id from event_deliveries where next_attempt_at <= :now
                            order by next_attempt_at limit :most for update skip locked),
                        claimed as (
                            update event_deliveries d set attempts = d.attempts + 1, next_attempt_at = :until
                            from due where d.id = due.id
                            returning d.id, d.event_id, d.subscription_id, d.attempts)
                        select c.id, e.id, e.type, e.subject, e.at, s.address, k.secret, c.attempts
                        from claimed c join events e on e.id = c.event_id
                        join event_subscriptions s on s.id = c.subscription_id join event_secrets k on k.subscription_id = s.id
                        order by e.at, e.id
                        """)
                .setParameter("now", now)
                .setParameter("until", now.plus(CLAIMED_FOR))
                .setParameter("most", AT_ONCE)
                .getResultList();
        return rows.stream()
                .map(row -> (Object[]) row)
                .map(row -> new Due(
                        (UUID) row[0],
                        (UUID) row[1],
                        (String) row[2],
                        (String) row[3],
                        (Instant) row[4],
                        (String) row[5],
                        (byte[]) row[6],
                        (Integer) row[7]))
                .toList();
    }

    private Answer post(Due due) {
        URI address = URI.create(due.address());
        String why = addresses.whyNot(address).orElse(null);
        if (why != null) {
            return new Answer(null, why);
        }
        String body = Message.body(due.eventId(), "/api", due.type(), due.subject(), due.at());
        long seconds = clock.instant().getEpochSecond();
        HttpRequest request = HttpRequest.newBuilder(address)
                .timeout(PATIENCE)
                .header("Content-Type", Message.MEDIA_TYPE + "; charset=UTF-8")
                .header("webhook-id", due.eventId().toString())
                .header("webhook-timestamp", Long.toString(seconds))
                .header(
                        "webhook-signature",
                        Message.signature(due.secret(), due.eventId().toString(), seconds, body))
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
        try {
            int status =
                    http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
            return new Answer(status, status >= 200 && status < 300 ? null : "It answered " + status + ".");
        } catch (IOException e) {
            return new Answer(null, "No answer: " + e.getClass().getSimpleName() + ".");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Answer(null, "The server was stopped.");
        }
    }

    private void note(Due due, Answer answer) {
        Instant now = clock.instant();
        boolean last = due.attempts() > AFTER.size();
        Instant next = answer.isTaken() || last ? null : now.plus(AFTER.get(due.attempts() - 1));
        entities.createNativeQuery("""
                        update event_deliveries set next_attempt_at = cast(:next as timestamptz),
                            delivered_at = cast(:delivered as timestamptz), given_up_at = cast(:givenUp as timestamptz),
                            last_status = cast(:status as integer), last_words = cast(:words as text)
                        where id = :id and next_attempt_at is not null
                        """)
                .setParameter("next", next)
                .setParameter("delivered", answer.isTaken() ? now : null)
                .setParameter("givenUp", !answer.isTaken() && last ? now : null)
                .setParameter("status", answer.status())
                .setParameter("words", answer.words())
                .setParameter("id", due.deliveryId())
                .executeUpdate();
        if (!answer.isTaken() && last) {
            LOG.warnf("A message to subscription of event %s is given up: %s", due.eventId(), answer.words());
        }
    }
}
