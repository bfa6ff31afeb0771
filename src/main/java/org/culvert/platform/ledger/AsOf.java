package org.culvert.platform.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.culvert.platform.InvalidException;

/**
 * Reads by the second clock: what was recorded at an instant, before later revisions. Personal data are read as they are
 * now, so that what was erased is not there in the past either.
 */
@ApplicationScoped
class AsOf {
    static final String PARAMETER = "asOf";
    /** RFC 7089, section 2.1.1; its format has no fractions of a second. */
    static final String HEADER = "Memento-Datetime";

    private static final String WANTED = "an instant that has passed, such as 2026-11-25T18:40:00Z";
    private static final DateTimeFormatter HTTP_DATE = DateTimeFormatter.ofPattern(
                    "EEE, dd MMM yyyy HH:mm:ss 'GMT'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private final EntityManager entities;
    private final Clock clock;

    AsOf(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    Instant parse(List<String> values) {
        Instant instant;
        try {
            if (values.size() != 1) {
                throw new DateTimeException("one instant is wanted");
            }
            // A bare plus of an offset is read as a space in a query.
            instant = OffsetDateTime.parse(values.get(0).replace(' ', '+')).toInstant();
        } catch (DateTimeException e) {
            throw InvalidException.of(PARAMETER, "This is no instant.", WANTED);
        }
        if (instant.isAfter(clock.instant())) {
            throw InvalidException.of(PARAMETER, "That is still to come.", WANTED);
        }
        if (instant.isBefore(Instant.EPOCH)) {
            throw InvalidException.of(PARAMETER, "Nothing was recorded then.", WANTED);
        }
        return instant;
    }

    /** Turns the rest of the transaction to that instant; it cannot write any more. */
    void enter(Instant instant) {
        entities.createNativeQuery("""
                        select set_config('search_path', 'as_it_was, public', true),
                               set_config('culvert.as_of', ?1, true),
                               set_config('transaction_read_only', 'on', true)
                        """).setParameter(1, instant.toString()).getSingleResult();
    }

    static String httpDate(Instant instant) {
        return HTTP_DATE.format(instant);
    }
}
