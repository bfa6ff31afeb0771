package org.culvert.care.clutch;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.care.incubation.TemperatureSeries;
import org.jspecify.annotations.Nullable;

/** One temperature by hand, or those of a file. */
@Entity
@Table(name = "clutch_temperature_records")
class TemperatureRecord extends ClutchPart {
    String source;
    String kind;
    int readings;
    Instant lastAt;
    double lowestCelsius;
    double highestCelsius;

    @Nullable
    @Column(name = "sha256")
    String sha256;

    protected TemperatureRecord() {}

    TemperatureRecord(
            UUID clutchId, String source, String kind, List<TemperatureSeries.Reading> told, @Nullable String sha256) {
        this(clutchId, source, kind, TemperatureSeries.of(told), told.size(), sha256);
    }

    private TemperatureRecord(
            UUID clutchId,
            String source,
            String kind,
            TemperatureSeries series,
            int readings,
            @Nullable String sha256) {
        super(clutchId, series.first().at());
        this.source = source;
        this.kind = kind;
        this.readings = readings;
        this.lastAt = series.last().at();
        this.lowestCelsius = series.lowest();
        this.highestCelsius = series.highest();
        this.sha256 = sha256;
    }
}
