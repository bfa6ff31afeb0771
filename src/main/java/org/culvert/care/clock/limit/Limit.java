package org.culvert.care.clock.limit;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A limit of time, as the calculation takes it.
 *
 * @param ends what ends it, whichever comes first
 * @param warnBeforeHours from how many hours before it is due it warns
 * @param listedAs words of the law for the taxa that it is about; empty: about all
 * @param validTo the first day on which it no longer holds; null: none is known
 */
public record Limit(
        UUID id,
        Binds binds,
        Starts starts,
        Set<Ends> ends,
        Length length,
        int warnBeforeHours,
        List<String> listedAs,
        LocalDate validFrom,
        @Nullable LocalDate validTo) {

    /** Whom it binds; who is authorised {@link Held} says. */
    public enum Binds {
        anyone,
        /** A holder without authorisation who is no clinic, such as a finder. */
        unauthorisedHolder,
        unauthorisedClinic,
        /** A clinic, authorised or not. */
        clinic,
        /** A holder with an authorisation, a clinic too. */
        authorisedHolder;

        boolean meets(Held held) {
            return switch (this) {
                case anyone -> true;
                case unauthorisedHolder -> !held.authorised() && !held.clinic();
                case unauthorisedClinic -> !held.authorised() && held.clinic();
                case clinic -> held.clinic();
                case authorisedHolder -> held.authorised();
            };
        }
    }

    /** What starts it. */
    public enum Starts {
        /** The animal was found. */
        found,
        /** The first of the holders whom it binds received it. */
        received,
        /** Each holder whom it binds took it: one clock for each of these links of custody. */
        takenIntoThisCustody,
        /** A vet had it stable. */
        stabilised,
        /** It died or was put down while somebody answered for it. */
        deathInCare
    }

    /** What ends it. */
    public enum Ends {
        /** A holder with an authorisation took it after whom it binds. */
        handedToAuthorisedHolder,
        /** A clinic took it after whom it binds. */
        handedToClinic,
        /** That link of custody ended. */
        custodyEnded,
        caseEnded,
        /** The authority was told, once it had started. */
        toldAuthority
    }

    public Limit {
        ends = Set.copyOf(ends);
        listedAs = List.copyOf(listedAs);
    }

    /** Whether it held on any day of a span. */
    boolean holdsBetween(Instant from, Instant to, ZoneId zone) {
        LocalDate first = from.atZone(zone).toLocalDate();
        LocalDate last = to.atZone(zone).toLocalDate();
        return !validFrom.isAfter(last) && (validTo == null || validTo.isAfter(first));
    }
}
