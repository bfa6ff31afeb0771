package org.culvert.web.clutch;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.web.forms.EntryForm;
import org.culvert.web.kept.KeptWays;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of a clutch.
 *
 * @param number of the mother's case
 * @param holder who holds it, as far as the asker sees that
 * @param due what waits today
 * @param bed in what the eggs lie, a sentence
 * @param events what happened, the latest first
 * @param forms by what they are; none for who only reads
 * @param ways to the forms that put what is recorded right
 */
public record ClutchPage(
        ClutchView told,
        long number,
        String vernacularName,
        String scientificName,
        boolean motherDead,
        String holder,
        List<Due> due,
        @Nullable ClutchPicture picture,
        String windowWords,
        String bed,
        List<TallyRow> tally,
        List<EventRow> events,
        Map<String, EntryForm> forms,
        KeptWays ways) {
    public String action() {
        return "/clutches/" + told.id();
    }

    public String fileAction() {
        return action() + "/temperature-files";
    }

    /**
     * What waits.
     *
     * @param pressing whether it should not wait for tomorrow
     */
    public record Due(String words, boolean pressing) {}

    /** One line of the sum. */
    public record TallyRow(String words, long eggs) {}

    /**
     * @param kind of the records among which it is corrected, or null
     * @param recordId its own among these
     * @param entryId of an entry that can be taken back, else null
     * @param withdrawn why it was taken back, or null
     */
    public record EventRow(
            @Nullable String kind,
            UUID recordId,
            @Nullable UUID entryId,
            String at,
            String words,
            @Nullable String withdrawn) {}

    /** A clutch of the list. */
    public record Listed(
            UUID id, long number, String vernacularName, long stillIncubating, String holder, List<Due> due) {}
}
