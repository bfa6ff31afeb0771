-- What a vet signed of an animal before it may go back, and who said that animals may be let go at a place.

CREATE TABLE fitness_checks (
    id                  uuid PRIMARY KEY,
    version             integer     NOT NULL DEFAULT 0,
    case_id             uuid        NOT NULL REFERENCES cases,
    -- a vet on the roster; empty for another, whose name is kept
    signed_by_member_id uuid REFERENCES members,
    vet_name            text,
    vet_registration    text        NOT NULL,
    -- by aspect, so that each is there once at most: {"movement": "fit", ...}
    items               jsonb       NOT NULL,
    housed_with_pets    text        NOT NULL CHECK (housed_with_pets IN ('yes', 'no', 'unknown')),
    words               text,
    happened_at         timestamptz NOT NULL,
    recorded_at         timestamptz NOT NULL,
    recorded_by         uuid        NOT NULL REFERENCES accounts,
    revised_at          timestamptz,
    revised_by          uuid REFERENCES accounts,
    revision_reason     text,
    import_id           uuid REFERENCES imports,
    CONSTRAINT one_vet_signs_a_check CHECK (num_nonnulls(signed_by_member_id, vet_name) = 1),
    CONSTRAINT what_is_looked_at_is_known CHECK (jsonb_typeof(items) = 'object' AND items <> '{}'
        AND items - ARRAY['movement', 'senses', 'coat', 'condition', 'woundsHealed', 'feedsItself', 'knowsItsKind',
                          'fearsPeople', 'reproduction'] = '{}'
        AND NOT jsonb_path_exists(items,
            'strict $.* ? (@.type() <> "string"
                || @ <> "fit" && @ <> "notFit" && @ <> "notLookedAt" && @ <> "doesNotApply")'))
);
CREATE INDEX fitness_checks_by_case ON fitness_checks (case_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON fitness_checks FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE VIEW fitness_check_holders AS
SELECT t.id, h.organisation_id FROM fitness_checks t JOIN case_holders h ON h.id = t.case_id;

-- An answer, yes or no, to whether animals may be let go at a site, or whether the animal of a case may. It stands until it is
-- withdrawn, or until its last day has passed.
CREATE TABLE release_approvals (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    site_id           uuid REFERENCES release_sites,
    case_id           uuid REFERENCES cases,
    of_whom           text        NOT NULL CHECK (of_whom IN ('landowner', 'protectedArea', 'border', 'wildlifeOfficer')),
    given             boolean     NOT NULL,
    until_day         date,
    reference         text,
    -- the body or office that was asked, not a person
    asked_of          text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was given or refused
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_approval_is_of_a_site_or_of_a_case CHECK (num_nonnulls(site_id, case_id) = 1),
    CONSTRAINT withdrawing_an_approval_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2)),
    -- two days for the zones of the earth
    CONSTRAINT an_approval_does_not_end_before_it_was_given
        CHECK (until_day >= (happened_at AT TIME ZONE 'UTC')::date - 2)
);
CREATE INDEX release_approvals_by_site ON release_approvals (site_id);
CREATE INDEX release_approvals_by_case ON release_approvals (case_id);

SELECT keep_revisions('release_approvals');
