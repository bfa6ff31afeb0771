package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How far a moving of places has come. */
@Entity
@Table(name = "place_move_progress")
class PlaceMoveProgress {
    @Id
    UUID placeMoveId;

    int timesBegun;
    Instant begunAt;

    /** How many places there were to move when it began. */
    int places;

    @Nullable
    Instant finishedAt;

    @Nullable
    Instant failedAt;

    @Nullable
    String failure;

    protected PlaceMoveProgress() {}

    PlaceMoveProgress(UUID placeMoveId, Instant begunAt, int places) {
        this.placeMoveId = placeMoveId;
        this.timesBegun = 1;
        this.begunAt = begunAt;
        this.places = places;
    }

    void beginAgain(Instant at) {
        timesBegun++;
        begunAt = at;
        failedAt = null;
        failure = null;
    }

    void fail(Instant at, String reason) {
        if (finishedAt == null) {
            failedAt = at;
            failure = reason;
        }
    }
}
