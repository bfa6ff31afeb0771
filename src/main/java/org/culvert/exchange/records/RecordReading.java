package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** How somebody decided that a file is to be read. */
@Entity
@Immutable
@Table(name = "record_readings")
class RecordReading extends Recorded {
    UUID recordFileId;

    @Nullable
    String name;

    @JdbcTypeCode(SqlTypes.JSON)
    List<String> headings;

    @JdbcTypeCode(SqlTypes.JSON)
    RecordReadingSettings settings;

    protected RecordReading() {}

    RecordReading(UUID recordFileId, @Nullable String name, List<String> headings, RecordReadingSettings settings) {
        this.recordFileId = recordFileId;
        this.name = name;
        this.headings = List.copyOf(headings);
        this.settings = settings;
    }
}
