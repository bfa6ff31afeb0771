package org.culvert.exchange.annualreturn;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.annualreturn.tally.Counted;
import org.culvert.roster.Holder;
import org.jspecify.annotations.Nullable;

/**
 * What a holder had at some time, whole chains of it.
 *
 * @param counted each with the identifier of its taxon
 * @param taxa by identifier
 * @param links by identifier
 */
record HeldThings(List<Counted> counted, Map<String, Kinds> taxa, Map<String, Link> links) {
    record Kinds(UUID id, UUID groupId, String scientificName, String vernacularName) {}

    /**
     * A link of custody.
     *
     * @param name call sign of a member, name of an organisation, or null for somebody outside the network
     * @param authorisation that was recorded with it, or null
     */
    record Link(
            Holder holder,
            @Nullable String name,
            Instant from,
            @Nullable String authorisation,
            @Nullable String licenceOrganisation,
            @Nullable String licenceNumber,
            @Nullable String licenceJurisdiction) {}
}
