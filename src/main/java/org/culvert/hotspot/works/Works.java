package org.culvert.hotspot.works;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Something built or done on a stretch against collisions. */
@Entity
@Table(name = "works")
class Works extends Recorded {
    private static final int LONGEST_WORDS = 2000;

    String kind;
    String words;
    String road;
    double fromChainageMetres;
    double toChainageMetres;
    int networkNumber;
    double endsMetres;
    LocalDate builtFrom;

    @Nullable
    LocalDate builtUntil;

    @Nullable
    LocalDate endedOn;

    @Nullable
    String effortChange;

    @Nullable
    String publicityChange;

    protected Works() {}

    static Works of(WorksService.WorksEntry entry, String road, int networkNumber) {
        var works = new Works();
        works.kind = entry.kind().name();
        works.words = entry.words();
        works.road = road;
        works.fromChainageMetres = entry.fromChainageMetres();
        works.toChainageMetres = entry.toChainageMetres();
        works.networkNumber = networkNumber;
        works.endsMetres = entry.endsMetres();
        works.builtFrom = entry.builtFrom();
        works.builtUntil = entry.builtUntil();
        works.endedOn = entry.endedOn();
        works.effortChange = entry.effortChange();
        works.publicityChange = entry.publicityChange();
        return works;
    }

    void correct(WorksService.WorksCorrection correction) {
        kind = Corrections.name("kind", correction.kind(), kind);
        words = Corrections.words("words", correction.words(), words, LONGEST_WORDS);
        road = Corrections.words("road", correction.road(), road, WorksService.LONGEST_ROAD);
        fromChainageMetres = correction.fromChainageMetres().over("fromChainageMetres", fromChainageMetres);
        toChainageMetres = correction.toChainageMetres().over("toChainageMetres", toChainageMetres);
        endsMetres = correction.endsMetres().over("endsMetres", endsMetres);
        builtFrom = correction.builtFrom().over("builtFrom", builtFrom);
        builtUntil = correction.builtUntil().over(builtUntil);
        endedOn = correction.endedOn().over(endedOn);
        effortChange = Corrections.text("effortChange", correction.effortChange(), effortChange, LONGEST_WORDS);
        publicityChange =
                Corrections.text("publicityChange", correction.publicityChange(), publicityChange, LONGEST_WORDS);
        revisedBecause(correction.reason());
    }

    /** Puts it where a network has it. */
    void lieOn(String label, int number) {
        road = label;
        networkNumber = number;
    }

    /** Whether they, or their building, stood on any day of a period. */
    boolean stoodIn(LocalDate from, LocalDate to) {
        return !builtFrom.isAfter(to) && (endedOn == null || endedOn.isAfter(from));
    }
}
