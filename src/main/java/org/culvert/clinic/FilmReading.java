package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
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

    void correct(ClinicCorrections.ReadingCorrection correction, Clock clock) {
        what = Corrections.words("what", correction.what(), what, 200);
        counted = correction.counted().over(counted);
        reader = Corrections.words("reader", correction.reader(), reader, 200);
        confidence = Corrections.name("confidence", correction.confidence(), confidence);
        happenedAt(Corrections.past("at", correction.at(), happenedAt(), clock));
        revisedBecause(correction.reason());
        if (counted != null && counted < 0) {
            throw InvalidException.of("counted", "Nothing is counted below 0.", "0 or more");
        }
    }
}
