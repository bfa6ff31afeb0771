package org.culvert.animal.intake;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** A part of the ground of a surge, from which animals come. */
@Entity
@Table(name = "surge_sectors")
class SurgeSector extends Recorded {
    UUID surgeId;
    String code;
    String words;

    @Nullable
    String areaWords;

    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    SectorArea area;

    protected SurgeSector() {}

    SurgeSector(UUID surgeId, SurgeEntries.SectorEntry entry, @Nullable SectorArea area) {
        this.surgeId = surgeId;
        this.code = entry.code();
        this.words = entry.words();
        this.areaWords = entry.areaWords();
        this.area = area;
    }
}
