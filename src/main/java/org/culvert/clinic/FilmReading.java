package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What somebody read off an X-ray film, and how sure they were. */
@Entity
@Table(name = "film_readings")
class FilmReading extends Recorded {
    UUID visitId;
    String what;

    @Nullable
    Integer counted;

    String reader;
    String confidence;

    protected FilmReading() {}

    FilmReading(UUID visitId, ClinicService.ReadingEntry entry) {
        happenedAt(entry.at());
        this.visitId = visitId;
        this.what = entry.what();
        this.counted = entry.counted();
        this.reader = entry.reader();
        this.confidence = entry.confidence().name();
    }
}
