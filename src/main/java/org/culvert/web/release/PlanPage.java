package org.culvert.web.release;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.web.forms.EntryForm;
import org.jspecify.annotations.Nullable;

/**
 * What is open before an animal may go back, and what the asker can enter of it.
 *
 * @param open what is recorded for and against it
 * @param everywhere what stands in the way wherever it goes
 * @param forms by what they are; those that the asker's role has
 */
public record PlanPage(
        UUID caseId,
        long number,
        String vernacularName,
        String scientificName,
        String jurisdiction,
        String withinMetres,
        List<Open> open,
        List<FindingRow> everywhere,
        List<AssessmentRow> assessments,
        Map<String, EntryForm> forms) {
    /**
     * Something that is recorded.
     *
     * @param pressing whether it stands in the way as it is
     * @param link to where more of it is said, or null
     */
    public record Open(
            String words, boolean pressing, @Nullable String link) {}

    /** One run of the rules that was kept. */
    public record AssessmentRow(
            UUID id,
            String title,
            String verdict,
            String verdictWords,
            List<FindingRow> against,
            List<FindingRow> advice) {}

    /** Whether nothing that is recorded stands in the way as it is. */
    public boolean isClear() {
        return everywhere.isEmpty() && open.stream().noneMatch(Open::pressing);
    }

    public String action() {
        return "/release-area/" + caseId;
    }
}
