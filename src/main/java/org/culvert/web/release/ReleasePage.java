package org.culvert.web.release;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.release.ReleaseView;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.kept.KeptWays;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a release.
 *
 * @param facts how it was made
 * @param forms by what they are; those that the asker's role has
 * @param ways to the forms that put what is recorded right
 */
public record ReleasePage(
        ReleaseView told,
        String when,
        String place,
        String position,
        List<Fact> facts,
        List<Animal> animals,
        List<Lifted> lifted,
        List<Picture> pictures,
        List<Seen> sightings,
        Map<String, EntryForm> forms,
        KeptWays ways) {
    public record Fact(String name, String words) {}

    /**
     * @param seen whether whoever asks may read its case
     * @param withdrawn why it was taken back that it was let go, or null
     */
    public record Animal(
            UUID caseId,
            String name,
            boolean seen,
            @Nullable String withdrawn) {}

    /** @param document address of the permit for who may have it, or null */
    public record Lifted(String words, @Nullable String document) {}

    public record Picture(
            UUID id,
            int index,
            String address,
            String caption,
            @Nullable String withdrawn) {}

    public record Seen(
            UUID id, String when, String words, @Nullable String withdrawn) {}

    /** A release of the list. */
    public record Listed(
            UUID id,
            String when,
            List<Animal> animals,
            String place,
            String since,
            @Nullable String feeding) {}

    /** A decision that an animal does not go back, of the list. */
    public record ListedDecision(
            UUID id,
            String name,
            String standing,
            String grounds,
            @Nullable String due) {}

    public String action() {
        return "/releases/" + told.id();
    }
}
