package org.culvert.taxon;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** Words that keep someone from harm, with the source they rest on. */
@Entity
@Table(name = "cautions")
class Caution extends Recorded {
    UUID taxonGroupId;
    String audience;
    String words;
    String source;
    LocalDate readOn;

    protected Caution() {}

    static Caution of(CautionService.CautionView view, UUID groupId) {
        var caution = new Caution();
        caution.taxonGroupId = groupId;
        caution.audience = view.audience();
        caution.words = view.words();
        caution.source = view.source();
        caution.readOn = view.readOn();
        return caution;
    }
}
