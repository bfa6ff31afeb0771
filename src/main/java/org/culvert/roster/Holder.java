package org.culvert.roster;

import jakarta.persistence.Embeddable;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * Who answers for an animal, a clutch or a body: a member, an organisation, or a person without an account such as a
 * finder or a police officer. Exactly one of the three.
 */
@Embeddable
public record Holder(
        @Nullable UUID memberId,
        @Nullable UUID organisationId,
        @Nullable UUID personId) {

    public static Holder member(UUID id) {
        return new Holder(id, null, null);
    }

    public static Holder organisation(UUID id) {
        return new Holder(null, id, null);
    }

    public static Holder person(UUID id) {
        return new Holder(null, null, id);
    }

    /**
     * @throws InvalidException naming {@code field} unless exactly one is given
     */
    public static Holder require(String field, @Nullable Holder holder) {
        int given = 0;
        if (holder != null) {
            given = (holder.memberId == null ? 0 : 1)
                    + (holder.organisationId == null ? 0 : 1)
                    + (holder.personId == null ? 0 : 1);
        }
        if (holder == null || given != 1) {
            throw InvalidException.of(
                    field, "Exactly one holder answers for it.", "one of memberId, organisationId, personId");
        }
        return holder;
    }
}
