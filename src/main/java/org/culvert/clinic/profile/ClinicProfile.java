package org.culvert.clinic.profile;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** What one clinic says of itself. */
@Entity
@Table(name = "clinic_profiles")
class ClinicProfile extends Recorded {
    UUID organisationId;
    String phone;

    @Nullable
    String whenClosed;

    @Nullable
    String words;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> treats;

    @JdbcTypeCode(SqlTypes.JSON)
    List<OpeningHours.Span> opening;

    protected ClinicProfile() {}

    static ClinicProfile of(ProfileService.ProfileEntry entry, OpeningHours hours) {
        var row = new ClinicProfile();
        row.organisationId = entry.clinicId();
        row.phone = entry.phone();
        row.whenClosed = entry.whenClosed();
        row.words = entry.words();
        row.treats = entry.treats();
        row.opening = hours.spans();
        return row;
    }

    OpeningHours hours() {
        return new OpeningHours(opening);
    }

    /** @param hours as corrected; null: as they were */
    void correct(ProfileService.ProfileCorrection correction, @Nullable OpeningHours hours) {
        phone = Corrections.words("phone", correction.phone(), phone, 200);
        whenClosed = Corrections.text("whenClosed", correction.whenClosed(), whenClosed, 2000);
        words = Corrections.text("words", correction.words(), words, 4000);
        treats = Objects.requireNonNullElse(correction.treats().over(treats), List.of());
        opening = hours == null ? opening : hours.spans();
        revisedBecause(correction.reason());
    }
}
