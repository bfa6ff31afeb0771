package org.culvert.hotspot.works;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What works did, as far as it can be told.
 *
 * @param season in words
 * @param roadClasses classes of road that they are compared with
 * @param comparison the stretches without works whose change is allowed for, in words
 * @param comparisonBefore collisions on them before; null where nothing can be compared
 * @param reportsElsewhereBefore collisions of all animals on all other roads before, as a measure of how many report
 * @param overdispersion k of one kilometre; null where there is no model
 * @param basisSentence whether the model allows for traffic
 * @param parts inside, ends, beyond, and combined; none where there is no estimate of what would have come without works
 * @param chanceOfSeeingAHalving beforehand, of counts like those before; null where there were none
 * @param saidPlainly what is too little to say more
 * @param notes of effort and publicity
 * @param cautions what is not allowed for
 * @param informationWithheld what the asker is not told
 */
public record EffectView(
        UUID worksId,
        String kind,
        String words,
        String road,
        double fromChainageMetres,
        double toChainageMetres,
        double endsMetres,
        double beyondMetres,
        @Nullable String taxonGroup,
        String season,
        @Nullable LocalDate beforeFrom,
        @Nullable LocalDate beforeTo,
        int yearsBefore,
        @Nullable LocalDate afterFrom,
        @Nullable LocalDate afterTo,
        int yearsAfter,
        List<String> roadClasses,
        String comparison,
        @Nullable Integer comparisonBefore,
        @Nullable Integer comparisonAfter,
        @Nullable Integer reportsElsewhereBefore,
        @Nullable Integer reportsElsewhereAfter,
        @Nullable Double overdispersion,
        @Nullable String basisSentence,
        List<PartView> parts,
        @Nullable Double chanceOfSeeingAHalving,
        List<String> saidPlainly,
        List<NoteView> notes,
        List<String> cautions,
        @Nullable String informationWithheld,
        @Nullable AnswerBasis basis) {
    /**
     * The effect on one part. Counts, and what they were without allowing for anything, are never told without an estimate
     * of what would have come without the works; figures are null where the asker is not told small numbers,
     * those of the effect where the stretch was unlike its model before and not fewer came after.
     *
     * @param part {@code inside}, {@code ends}, {@code beyond} or {@code combined}
     * @param lengthMetres of road, on every carriageway
     * @param before collisions before
     * @param after collisions after
     * @param predictedBefore what roads of the same classes had in those years on such a length
     * @param expected what would have come after without the works
     * @param expectedStandardError of that
     * @param ratio what came over what would have come; null where none came, or it is not known
     * @param ratioLow lower end of the exact interval of the ratio
     * @param ratioHigh upper end; null where there is none
     * @param upperBound with one-sided confidence the ratio is below this
     * @param reductionPercent fewer than expected; null where none came
     * @param rawRatio after over before by years alone, to show how far it is out
     * @param verdict in words
     */
    public record PartView(
            String part,
            double lengthMetres,
            @Nullable Integer before,
            @Nullable Integer after,
            @Nullable Double predictedBefore,
            @Nullable Double expected,
            @Nullable Double expectedStandardError,
            @Nullable Double ratio,
            @Nullable Double ratioLow,
            @Nullable Double ratioHigh,
            double level,
            @Nullable Double upperBound,
            @Nullable Double reductionPercent,
            @Nullable Double rawRatio,
            String method,
            String verdict) {}

    /** Something that changed besides the works. */
    public record NoteView(String kind, String text, String source) {}
}
