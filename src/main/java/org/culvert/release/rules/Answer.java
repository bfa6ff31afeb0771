package org.culvert.release.rules;

import org.jspecify.annotations.Nullable;

/** What one question comes to: its verdict, what it was held against, and words with the figures. */
record Answer(
        Verdict verdict,
        @Nullable Separation separation,
        @Nullable Double limitMetres,
        String words) {
    static Answer pass(String words) {
        return new Answer(Verdict.pass, null, null, words);
    }

    static Answer fail(String words) {
        return new Answer(Verdict.fail, null, null, words);
    }

    static Answer cantTell(String words) {
        return new Answer(Verdict.cantTell, null, null, words);
    }
}
