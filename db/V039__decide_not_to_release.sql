-- That an animal may not go back is decided by a vet, and is a record with what comes of it.
CREATE TABLE non_release_decisions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    grounds           jsonb       NOT NULL,
    words             text        NOT NULL,
    vet_name          text        NOT NULL,
    vet_registration  text        NOT NULL,
    review_due_on     date,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was decided
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_non_release_decision_and_its_time UNIQUE (id, happened_at),
    CONSTRAINT a_non_release_decision_has_its_grounds CHECK (CASE WHEN jsonb_typeof(grounds) = 'array'
        THEN jsonb_array_length(grounds) > 0
            AND grounds <@ '["injury", "cannotBreedSafely", "unknownOrigin", "imprinted", "disease", "housedWithPets",
                             "noFitPlace"]'
        ELSE false END),
    -- The day in the region is looked at by the server; here it is within a day of it, wherever the region lies.
    CONSTRAINT a_welfare_review_is_due_after_the_decision
        CHECK (review_due_on >= (happened_at AT TIME ZONE 'UTC')::date),
    CONSTRAINT withdrawing_a_non_release_decision_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX one_non_release_decision_stands_for_a_case ON non_release_decisions (case_id)
    WHERE withdrawn_at IS NULL;
CREATE INDEX non_release_decisions_by_case ON non_release_decisions (case_id);
CREATE INDEX non_release_decisions_by_review ON non_release_decisions (review_due_on) WHERE withdrawn_at IS NULL;

CREATE TABLE second_opinions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    decision_id       uuid        NOT NULL REFERENCES non_release_decisions,
    vet_name          text        NOT NULL,
    vet_registration  text        NOT NULL,
    agrees            boolean     NOT NULL,
    words             text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_a_second_opinion_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX second_opinions_by_decision ON second_opinions (decision_id);

-- Names and registrations of one person are written in several ways. It is looked at when an opinion is entered, and not
-- again: names that were erased later are all alike.
CREATE FUNCTION bare_name(told text) RETURNS text LANGUAGE sql IMMUTABLE AS $$
    SELECT lower(regexp_replace(told, '[[:space:].,;:/_-]+', '', 'g'))
$$;
CREATE FUNCTION require_another_vet() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM non_release_decisions d WHERE d.id = NEW.decision_id
               AND (bare_name(d.vet_registration) = bare_name(NEW.vet_registration)
                    OR bare_name(d.vet_name) = bare_name(NEW.vet_name))) THEN
        RAISE EXCEPTION 'the second opinion is of who decided'
            USING ERRCODE = 'check_violation', CONSTRAINT = 'a_second_opinion_is_anothers', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER a_second_opinion_is_anothers BEFORE INSERT ON second_opinions
    FOR EACH ROW EXECUTE FUNCTION require_another_vet();

CREATE TABLE authority_notices (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    decision_id       uuid        NOT NULL REFERENCES non_release_decisions,
    authority         text        NOT NULL,
    reference         text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_an_authority_notice_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX authority_notices_by_decision ON authority_notices (decision_id);

CREATE TABLE permits_to_keep (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    decision_id       uuid        NOT NULL REFERENCES non_release_decisions,
    number            text        NOT NULL,
    issued_by         text        NOT NULL,
    document_name     text        NOT NULL,
    file_id           uuid        NOT NULL REFERENCES release_files CONSTRAINT a_file_is_one_permit UNIQUE,
    valid_from        date        NOT NULL,
    valid_to          date,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_permit_to_keep_and_its_decision UNIQUE (id, decision_id),
    CONSTRAINT a_permit_to_keep_ends_after_it_begins CHECK (valid_to >= valid_from),
    CONSTRAINT withdrawing_a_permit_to_keep_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX permits_to_keep_by_decision ON permits_to_keep (decision_id);

CREATE TABLE welfare_reviews (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    decision_id       uuid        NOT NULL REFERENCES non_release_decisions,
    decided_at        timestamptz NOT NULL,
    reviewed_by       text        NOT NULL,
    words             text        NOT NULL,
    next_due_on       date        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_welfare_review_is_of_a_decision_at_its_time
        FOREIGN KEY (decision_id, decided_at) REFERENCES non_release_decisions (id, happened_at),
    CONSTRAINT a_welfare_review_comes_after_the_decision CHECK (happened_at >= decided_at),
    CONSTRAINT the_next_welfare_review_comes_later CHECK (next_due_on >= (happened_at AT TIME ZONE 'UTC')::date),
    CONSTRAINT withdrawing_a_welfare_review_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX welfare_reviews_by_decision ON welfare_reviews (decision_id);

-- What is to become of the animal. That it was put down is the fate of its case, and is recorded there.
CREATE TABLE non_release_outcomes (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    decision_id       uuid        NOT NULL REFERENCES non_release_decisions,
    outcome           text        NOT NULL CHECK (outcome IN ('placement', 'euthanasia')),
    placed_with       text,
    permit_to_keep_id uuid,
    approved_by       text,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_outcome_names_a_permit_of_its_decision
        FOREIGN KEY (permit_to_keep_id, decision_id) REFERENCES permits_to_keep (id, decision_id),
    CONSTRAINT a_placement_is_with_somebody CHECK ((outcome = 'placement') = (placed_with IS NOT NULL)),
    CONSTRAINT only_a_placement_has_a_permit CHECK (permit_to_keep_id IS NULL OR outcome = 'placement'),
    CONSTRAINT euthanasia_has_its_approver CHECK (outcome <> 'euthanasia' OR approved_by IS NOT NULL),
    CONSTRAINT withdrawing_an_outcome_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX one_outcome_of_a_decision_stands ON non_release_outcomes (decision_id) WHERE withdrawn_at IS NULL;
CREATE INDEX non_release_outcomes_by_decision ON non_release_outcomes (decision_id);

CREATE VIEW non_release_holders AS
SELECT d.id, h.organisation_id FROM non_release_decisions d JOIN case_holders h ON h.id = d.case_id;

SELECT keep_revisions('non_release_decisions'), keep_revisions('second_opinions'), keep_revisions('authority_notices'),
       keep_revisions('permits_to_keep'), keep_revisions('welfare_reviews'), keep_revisions('non_release_outcomes');
SELECT belongs_by('non_release_decisions', 'case_id'), belongs_by('second_opinions', 'decision_id'),
       belongs_by('authority_notices', 'decision_id'), belongs_by('permits_to_keep', 'decision_id', 'file_id'),
       belongs_by('welfare_reviews', 'decision_id'), belongs_by('non_release_outcomes', 'decision_id');
SELECT held_by('non_release_decisions', 'case_id', 'case_holders'),
       held_by('second_opinions', 'decision_id', 'non_release_holders'),
       held_by('authority_notices', 'decision_id', 'non_release_holders'),
       held_by('permits_to_keep', 'decision_id', 'non_release_holders'),
       held_by('welfare_reviews', 'decision_id', 'non_release_holders'),
       held_by('non_release_outcomes', 'decision_id', 'non_release_holders');
