package org.culvert.care.growth;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;

/** A measure from which no age of a taxon is told. */
@Entity
@Table(name = "age_cautions")
class AgeCaution extends Recorded {
    String scientificName;
    String measure;
    String words;
    String source;
    LocalDate readOn;

    protected AgeCaution() {}

    AgeCaution(GrowthEntries.AgeCautionEntry entry) {
        this.scientificName = entry.taxon();
        this.measure = entry.measure().name();
        this.words = entry.words();
        this.source = entry.source();
        this.readOn = entry.readOn();
    }

    /** Whether it is about a taxon: its own, a lower rank of it, or a higher one to which it belongs. */
    boolean isAbout(String taxon, String ofMeasure) {
        return measure.equals(ofMeasure)
                && (taxon.equals(scientificName)
                        || taxon.startsWith(scientificName + " ")
                        || scientificName.startsWith(taxon + " "));
    }
}
