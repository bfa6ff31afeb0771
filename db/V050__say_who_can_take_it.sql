-- Who can take an animal: what carers say of themselves, when they are away, what is kept apart and what in company.

ALTER TABLE authorisations
    -- the premises it names, in its own words; null: it names none
    ADD COLUMN premises text,
    -- held only under somebody who has one of their own
    ADD COLUMN supervised boolean NOT NULL DEFAULT false;

CREATE TABLE carer_profiles (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    member_id       uuid        NOT NULL CONSTRAINT a_carer_has_one_profile UNIQUE REFERENCES members,
    -- what the premises are called on an authorisation; never an address
    premises        text,
    supervisor_id   uuid REFERENCES members,
    -- how many animals this carer takes at once, of all groups together; null: not told
    places          integer CONSTRAINT places_are_none_or_more CHECK (places >= 0),
    -- the same by key of a group
    places_by_group jsonb       NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT nobody_supervises_themselves CHECK (supervisor_id <> member_id)
);

-- Why somebody is away is nobody's business.
CREATE TABLE carer_absences (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    member_id         uuid        NOT NULL REFERENCES members,
    from_day          date        NOT NULL,
    until_day         date        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_absence_ends_after_it_began CHECK (until_day >= from_day),
    CONSTRAINT withdrawing_an_absence_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX carer_absences_by_member ON carer_absences (member_id);

CREATE TABLE keeping_rules (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    keep              text        NOT NULL CHECK (keep IN ('apart', 'inCompany')),
    taxon_group_id    uuid        NOT NULL REFERENCES taxon_groups,
    -- from which it is kept apart
    other_group_id    uuid REFERENCES taxon_groups,
    strength          text        NOT NULL CHECK (strength IN ('policy', 'advice')),
    words             text        NOT NULL,
    source            text        NOT NULL,
    read_on           date        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT what_is_kept_apart_has_another_group CHECK ((keep = 'apart') = (other_group_id IS NOT NULL)),
    CONSTRAINT withdrawing_a_keeping_rule_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);

ALTER TABLE placements
    -- why in spite of a rule of the network's own
    ADD COLUMN despite text,
    -- what was tested when it was agreed, with what came of it
    ADD COLUMN tests   jsonb NOT NULL DEFAULT '[]',
    -- rules of the network that it passed over
    ADD COLUMN passed_over integer NOT NULL DEFAULT 0,
    ADD CONSTRAINT passing_over_a_rule_has_a_reason CHECK (passed_over = 0 OR despite IS NOT NULL);

SELECT keep_revisions('carer_profiles'), keep_revisions('carer_absences'), keep_revisions('keeping_rules'),
       belongs_by('carer_profiles', 'member_id'), belongs_by('carer_absences', 'member_id');

-- Animals that somebody holds or has been offered, by group. One that is offered counts as if it were there.
CREATE VIEW animals_with_carers AS
SELECT l.holder_member_id AS member_id, l.case_id, false AS offered
FROM custody_links l
WHERE l.holder_member_id IS NOT NULL AND upper_inf(l.held)
UNION ALL
SELECT o.taker_member_id, o.case_id, true
FROM hand_overs o
WHERE o.taker_member_id IS NOT NULL AND o.accepted_at IS NULL AND o.refused_at IS NULL
  AND NOT EXISTS (SELECT 1 FROM custody_links l
                  WHERE l.case_id = o.case_id AND l.holder_member_id = o.taker_member_id AND upper_inf(l.held));

-- Two who fill the same place wait here for each other, and the second is refused.
CREATE FUNCTION count_places() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    limits carer_profiles;
    of_group text;
    there integer;
    of_group_there integer;
BEGIN
    SELECT * INTO limits FROM carer_profiles WHERE member_id = NEW.carer_id FOR UPDATE;
    IF NOT FOUND OR NEW.despite IS NOT NULL THEN
        RETURN NEW;
    END IF;
    SELECT g.key INTO of_group
    FROM cases c JOIN animals a ON a.id = c.animal_id JOIN taxa t ON t.id = a.taxon_id
    JOIN taxon_groups g ON g.id = t.taxon_group_id WHERE c.id = NEW.case_id;
    SELECT count(*), count(*) FILTER (WHERE g.key = of_group) INTO there, of_group_there
    FROM animals_with_carers w JOIN cases c ON c.id = w.case_id JOIN animals a ON a.id = c.animal_id
    JOIN taxa t ON t.id = a.taxon_id JOIN taxon_groups g ON g.id = t.taxon_group_id
    WHERE w.member_id = NEW.carer_id;
    IF there > limits.places OR of_group_there > (limits.places_by_group ->> of_group)::integer THEN
        RAISE EXCEPTION 'no place is free' USING ERRCODE = 'check_violation', CONSTRAINT = 'a_place_is_filled_once';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER count_places BEFORE INSERT ON placements FOR EACH ROW EXECUTE FUNCTION count_places();
