package org.culvert.platform;

import jakarta.persistence.EntityListeners;
import jakarta.persistence.Id;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.Transient;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.UuidGenerator;
import org.jspecify.annotations.Nullable;

/**
 * What every record of the network carries: an identity, a version, and two clocks.
 *
 * <p>{@code happenedAt} is when it happened in the world, {@code recordedAt} when it was entered, and by whom. A change
 * leaves the row as it was in {@code revisions} (a trigger sees to that) and says when, by whom and why it was made.
 */
@MappedSuperclass
@EntityListeners(RecordListener.class)
public abstract class Recorded {
    @Id
    @UuidGenerator(style = UuidGenerator.Style.VERSION_7)
    UUID id;

    @Version
    int version;

    @Nullable
    Instant happenedAt;

    Instant recordedAt;
    UUID recordedBy;

    @Nullable
    Instant revisedAt;

    @Nullable
    UUID revisedBy;

    @Nullable
    String revisionReason;

    @Nullable
    UUID importId;

    /** Whether the reason is of the change that is being made, and not left from the one before. */
    @Transient
    boolean reasonGiven;

    protected Recorded() {}

    public UUID id() {
        return id;
    }

    public int version() {
        return version;
    }

    /** When it happened, or null where that is not known. */
    public @Nullable Instant happenedAt() {
        return happenedAt;
    }

    /** When the first revision was entered. */
    public Instant recordedAt() {
        return recordedAt;
    }

    public UUID recordedBy() {
        return recordedBy;
    }

    public @Nullable Instant revisedAt() {
        return revisedAt;
    }

    public @Nullable UUID revisedBy() {
        return revisedBy;
    }

    /** Why the current revision was made. */
    public @Nullable String revisionReason() {
        return revisionReason;
    }

    protected void happenedAt(@Nullable Instant instant) {
        this.happenedAt = instant;
    }

    /** Marks where an imported row came from. */
    public void importedBy(@Nullable UUID importId) {
        this.importId = importId;
    }

    /** Says why the current change is made. */
    protected void revisedBecause(@Nullable String reason) {
        this.revisionReason = reason;
        this.reasonGiven = true;
        // A correction that changes personal data alone, or repeats a reason, is a revision of this row all the same.
        this.revisedAt = null;
    }
}
