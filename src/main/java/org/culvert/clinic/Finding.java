package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** What was found where on the body. */
@Entity
@Table(name = "findings")
class Finding extends Recorded {
    UUID visitId;
    String bodyPart;
    String side;

    /** Key of a part of the body; null: told in words alone. */
    @Nullable
    String part;

    @Nullable
    String kind;

    @jakarta.persistence.Column(name = "finding")
    String words;

    protected Finding() {}

    Finding(UUID visitId, ClinicService.FindingEntry entry, BodyParts.Place place) {
        this.visitId = visitId;
        this.kind = entry.kind() == null ? null : entry.kind().name();
        this.words = entry.finding();
        isAt(place);
    }

    private void isAt(BodyParts.Place place) {
        bodyPart = place.words();
        side = place.side().name();
        part = place.part();
    }

    /** @param place as it is after the correction */
    void correct(ClinicCorrections.FindingCorrection correction, BodyParts.Place place) {
        isAt(place);
        kind = Corrections.nameOrNone(correction.kind(), kind);
        words = Corrections.words("finding", correction.finding(), words, 4000);
        revisedBecause(correction.reason());
    }
}
