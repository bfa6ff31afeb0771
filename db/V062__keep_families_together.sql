-- A mother and her young, and siblings, go to one carer, unless somebody says that one of them goes alone; and supervision of
-- a carer lasts from a day to a day.

-- What a person says of it beside what mothers are on record: together with another animal, or alone.
CREATE TABLE keeping_ties (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    keep              text        NOT NULL CHECK (keep IN ('together', 'alone')),
    other_case_id     uuid REFERENCES cases,
    words             text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT together_is_with_another_animal CHECK ((keep = 'together') = (other_case_id IS NOT NULL)),
    CONSTRAINT nobody_is_kept_with_themselves CHECK (other_case_id <> case_id),
    CONSTRAINT withdrawing_a_keeping_tie_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX two_are_told_to_be_together_once
    ON keeping_ties (least(case_id, other_case_id), greatest(case_id, other_case_id))
    WHERE withdrawn_at IS NULL AND keep = 'together';
CREATE UNIQUE INDEX one_is_told_to_go_alone_once ON keeping_ties (case_id) WHERE withdrawn_at IS NULL AND keep = 'alone';
CREATE INDEX keeping_ties_by_case ON keeping_ties (case_id);
CREATE INDEX keeping_ties_by_other ON keeping_ties (other_case_id);
CREATE INDEX animals_by_mother ON animals (mother_id);

CREATE VIEW keeping_tie_holders AS
SELECT t.id, h.organisation_id FROM keeping_ties t JOIN case_holders h ON h.id = t.case_id;

SELECT keep_revisions('keeping_ties');
SELECT belongs_by('keeping_ties', 'case_id', 'other_case_id', 'keep'), held_by('keeping_ties', 'case_id', 'case_holders');

ALTER TABLE carer_profiles
    -- the first and the last day of it; empty: it is not told when it began, or that it will end
    ADD COLUMN supervised_from  date,
    ADD COLUMN supervised_until date,
    ADD CONSTRAINT supervision_ends_after_it_begins CHECK (supervised_until >= supervised_from),
    ADD CONSTRAINT days_of_supervision_have_a_supervisor
        CHECK (supervisor_id IS NOT NULL OR num_nonnulls(supervised_from, supervised_until) = 0);
