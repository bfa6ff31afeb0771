-- What a caller was told, sentence by sentence, as it was ticked.

CREATE TABLE told_words (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    call_id           uuid        NOT NULL REFERENCES calls,
    words             text        NOT NULL CHECK (length(words) BETWEEN 1 AND 2000),
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was said
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_a_tick_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX a_sentence_is_ticked_once ON told_words (call_id, md5(words)) WHERE withdrawn_at IS NULL;

SELECT keep_revisions('told_words');
CREATE VIEW told_words_holders AS
SELECT t.id, h.organisation_id FROM told_words t JOIN call_holders h ON h.id = t.call_id;
SELECT belongs_by('told_words', 'call_id', 'words'), held_by('told_words', 'call_id', 'call_holders');
