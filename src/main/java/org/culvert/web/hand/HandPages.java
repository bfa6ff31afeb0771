package org.culvert.web.hand;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the pages of rescuers and carers show, in the words of one language. */
public final class HandPages {
    private HandPages() {}

    /**
     * What stands around every page.
     *
     * @param signedAs by whom entries of its forms are signed
     * @param key what the keys of its forms begin with, so that each is taken once
     * @param madeAt when the server wrote it
     */
    public record Frame(UUID accountId, String signedAs, String key, Instant madeAt, String zone) {}

    /**
     * @param astray what was sent and not taken from a form that is not here any more
     * @param due the most pressing first
     */
    public record ListPage(
            Frame frame,
            Sent astray,
            String title,
            boolean isMember,
            boolean cares,
            List<Card> due,
            List<Card> later,
            List<Held> held,
            List<String> entered) {
        public @Nullable Card first() {
            return due.isEmpty() ? null : due.get(0);
        }

        public List<Card> rest() {
            return due.isEmpty() ? List.of() : due.subList(1, due.size());
        }
    }

    /**
     * One thing that waits.
     *
     * @param href the page where it is done, where that is not here
     * @param action what the link to that page says
     */
    public record Card(
            String id,
            String title,
            String line,
            boolean pressing,
            @Nullable String href,
            @Nullable String action,
            @Nullable TaskForm task,
            @Nullable TakeForm take) {
        /** Whether its form was sent and not taken, so that it is to be seen. */
        public boolean isOpen() {
            return (task != null && task.sent().isRefused())
                    || (take != null && take.sent().isRefused());
        }
    }

    /**
     * @param kind {@code number}, {@code answer}, {@code photograph} or {@code tick}
     * @param photographs that may be named, where the task is one
     */
    public record TaskForm(
            String id,
            UUID caseId,
            String stepKey,
            int day,
            String kind,
            String unit,
            String unitWords,
            @Nullable String limits,
            @Nullable String low,
            @Nullable String high,
            List<Choice> photographs,
            Sent sent) {}

    public record TakeForm(UUID handOverId, Sent sent) {}

    /** An animal that is with whoever asks. */
    public record Held(UUID caseId, String name, @Nullable String limits, boolean falls) {}

    /**
     * A going-out, with what to mind before anything else.
     *
     * @param openCase where a case is opened for the animal, once the going-out has ended with one
     */
    public record OutingPage(
            Frame frame,
            Sent astray,
            UUID id,
            UUID incidentId,
            String title,
            boolean mayAct,
            String hurt,
            List<String> animals,
            List<String> cautions,
            List<GateLine> gate,
            @Nullable String setAside,
            @Nullable Spot spot,
            List<String> past,
            List<Step> steps,
            String step,
            @Nullable String ended,
            @Nullable String openCase,
            List<Choice> outcomes,
            Sent scene,
            Picture picture,
            Sent stepSent) {}

    /** @param state {@code stops}, {@code cannotTell}, {@code passed} or {@code advice} */
    public record GateLine(String name, String state, String stateWords, String words) {}

    /** Where it is, in words and for a map. */
    public record Spot(
            @Nullable String road,
            List<String> more,
            String latitude,
            String longitude,
            String known,
            @Nullable String said) {}

    /**
     * A step that can be entered.
     *
     * @param path what it is called in the API
     * @param field which field of the record it fills
     * @param isNext whether it is the one that comes now
     */
    public record Step(String act, String path, String field, String words, boolean isNext) {}

    /**
     * Where a photograph is added.
     *
     * @param action where the form is sent
     * @param path where the API takes it
     * @param there how many there are
     */
    public record Picture(String action, String path, int there, Sent sent) {}

    public record Choice(String value, String words, boolean chosen) {}

    /** An animal that is with whoever asks, and what can be said of it. */
    public record AnimalPage(
            Frame frame,
            Sent astray,
            UUID caseId,
            String name,
            String scientificName,
            boolean cares,
            @Nullable String limits,
            @Nullable String reviewOver,
            List<String> more,
            boolean hasPlan,
            boolean falls,
            List<String> entered,
            List<String> referOut,
            @Nullable String offered,
            List<Choice> organisations,
            Picture picture,
            List<Choice> photographs,
            Sent beside,
            Sent give,
            Sent giveByName) {}
}
