package org.culvert.care.growth;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.care.growth.GrowthEntries.BodyMeasure;
import org.culvert.care.growth.GrowthEntries.GrowthRow;
import org.culvert.care.growth.curve.GrowthCurve;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** What an animal of some age weighs or measures, as somebody published it. */
@Entity
@Table(name = "growth_tables")
class GrowthTable extends Recorded {
    String key;
    String name;
    UUID taxonId;
    String sex;
    String measure;

    @Nullable
    String measureWords;

    boolean estimatesAge;

    @JdbcTypeCode(SqlTypes.JSON)
    @Column(name = "rows")
    List<GrowthRow> rows;

    String source;
    LocalDate readOn;
    String licence;

    protected GrowthTable() {}

    GrowthTable(GrowthEntries.GrowthTableEntry entry, UUID taxonId, List<GrowthRow> rows) {
        this.key = entry.key();
        this.name = entry.name();
        this.taxonId = taxonId;
        this.sex = entry.sex().name();
        this.measure = entry.measure().name();
        this.measureWords = entry.measureWords();
        this.estimatesAge = entry.estimatesAge();
        this.rows = rows;
        this.source = entry.source();
        this.readOn = entry.readOn();
        this.licence = entry.licence();
    }

    /** What its revision is called, from 1. */
    int revision() {
        return version() + 1;
    }

    BodyMeasure bodyMeasure() {
        return BodyMeasure.valueOf(measure);
    }

    GrowthCurve curve() {
        return GrowthCurve.of(GrowthRows.of(rows));
    }

    void correct(GrowthEntries.GrowthTableCorrection correction) {
        name = Corrections.words("name", correction.name(), name, 200);
        measureWords = Corrections.text("measureWords", correction.measureWords(), measureWords, 1000);
        estimatesAge = correction.estimatesAge().over("estimatesAge", estimatesAge);
        rows = correction.rows().over("rows", rows);
        source = Corrections.words("source", correction.source(), source, 2000);
        licence = Corrections.words("licence", correction.licence(), licence, 1000);
        revisedBecause(correction.reason());
    }
}
