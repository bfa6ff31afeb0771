package org.culvert.web.release;

import java.util.List;
import java.util.UUID;
import org.culvert.web.forms.EntryForm;

/**
 * What stands before somebody who records a release.
 *
 * @param chosen assessments by which it is recorded
 * @param place where
 */
public record NewReleasePage(List<Chosen> chosen, String place, EntryForm form) {
    /** One animal, by its assessment, and what was not passed. */
    public record Chosen(
            UUID assessmentId,
            UUID caseId,
            String name,
            String title,
            String verdictWords,
            List<FindingRow> against,
            List<FindingRow> advice) {}
}
