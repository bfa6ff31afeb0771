package org.culvert.web.release;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.release.nonrelease.NonReleaseView;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.kept.KeptWays;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a decision that an animal does not go back.
 *
 * @param caseSeen whether whoever asks may read the case
 * @param forms by what they are; those that the asker's role has
 * @param ways to the forms that put what is recorded right
 */
public record DecisionPage(
        NonReleaseView told,
        boolean caseSeen,
        String decided,
        String standing,
        String grounds,
        @Nullable String reviewDue,
        List<Part> opinions,
        List<Part> notices,
        List<Part> permits,
        List<Part> reviews,
        List<Part> outcomes,
        Map<String, EntryForm> forms,
        KeptWays ways) {
    /**
     * One thing that came of it.
     *
     * @param link to its document for who may have it, or null
     * @param withdrawn why it was taken back, or null
     */
    public record Part(
            UUID id,
            String when,
            String words,
            @Nullable String link,
            @Nullable String withdrawn) {}

    public String action() {
        return "/non-release-decisions/" + told.id();
    }
}
