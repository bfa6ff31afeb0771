package org.culvert.call;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A call as those see it who may.
 *
 * @param callerId by which coordinators find what is held about the caller
 * @param callerHidden whether the caller is hidden from everybody, with what they said
 * @param caller who rang; null for everybody but dispatchers and coordinators
 * @param words what was said; null likewise
 * @param lateByHours how many hours after it was received it was entered, when more than an hour
 */
public record CallView(
        UUID id,
        UUID incidentId,
        Instant receivedAt,
        Instant recordedAt,
        @Nullable Long lateByHours,
        String anyoneHurt,
        String offTheRoad,
        @Nullable String policeReference,
        String cause,
        @Nullable UUID callerId,
        boolean callerHidden,
        CallEntry.@Nullable Caller caller,
        @Nullable String words,
        @Nullable PlaceView place,
        List<AnimalView> animals,
        RecordView record) {

    /** Animals of one kind as the caller told of them. */
    public record AnimalView(
            UUID id,
            @Nullable UUID taxonId,
            @Nullable String scientificName,
            @Nullable String vernacularName,
            @Nullable String taxonGroup,
            @Nullable String verbatimIdentification,
            String identificationVerificationStatus,
            int individualCount,
            String vitality,
            @Nullable String lifeStage,
            @Nullable String sex,
            @Nullable String condition,
            String pouchChecked,
            boolean carcassSigned,
            RecordView record) {}
}
