package org.culvert.web.animal;

import org.jspecify.annotations.Nullable;

/**
 * One thing that has to be decided or done next.
 *
 * @param state {@code overdue}, {@code warned}, {@code cantTell} or {@code waits}, for which a sign stands beside the colour
 * @param said what a rule or a record says of it, in its own words
 * @param source where a limit was read
 * @param href where it is done
 */
public record CaseWait(
        String state,
        String title,
        @Nullable String said,
        @Nullable String source,
        @Nullable String href,
        @Nullable String link) {

    static CaseWait of(String state, String title) {
        return new CaseWait(state, title, null, null, null, null);
    }

    CaseWait said(@Nullable String words) {
        return new CaseWait(state, title, words, source, href, link);
    }

    CaseWait source(String words) {
        return new CaseWait(state, title, said, words, href, link);
    }

    CaseWait leadsTo(String address, String words) {
        return new CaseWait(state, title, said, source, address, words);
    }

    public String sign() {
        return switch (state) {
            case "overdue" -> "✗";
            case "warned" -> "!";
            case "cantTell" -> "?";
            default -> "→";
        };
    }
}
