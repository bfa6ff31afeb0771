package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One animal of a proposal. */
@Entity
@Table(name = "placement_proposal_rows")
class ProposalRow extends Recorded {
    UUID proposalId;
    UUID caseId;

    @Nullable
    UUID carerId;

    @Nullable
    Double burdenKilometres;

    String words;

    @Nullable
    UUID placementId;

    protected ProposalRow() {}

    ProposalRow(UUID proposalId, UUID caseId, Sharer.Share share) {
        this.proposalId = proposalId;
        this.caseId = caseId;
        this.carerId = share.carerId();
        this.burdenKilometres = share.burdenKilometres();
        this.words = share.words();
    }
}
