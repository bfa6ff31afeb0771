-- Placements with a carer, and clutches with whoever runs the incubator.

-- A placement says why this carer: agreed by whom, under which authorisation. From when to when the carer answers for
-- the animal is custody's to say.
CREATE TABLE placements (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    carer_id        uuid        NOT NULL REFERENCES members,
    hand_over_id    uuid        NOT NULL UNIQUE REFERENCES hand_overs,
    authorisation   text        NOT NULL,
    visit_id        uuid REFERENCES visits,
    conditions      text,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX placements_by_case ON placements (case_id);

-- Eggs of one mother.
CREATE TABLE clutches (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    mother_case_id  uuid        NOT NULL REFERENCES cases,
    visit_id        uuid REFERENCES visits,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX clutches_by_mother ON clutches (mother_case_id);

-- Eggs come at once or by and by (surgery, then one more in the tub): each recovery accounts for all of its eggs.
CREATE TABLE egg_recoveries (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    clutch_id       uuid        NOT NULL REFERENCES clutches,
    recovered       integer     NOT NULL CHECK (recovered > 0),
    set_to_incubate integer     NOT NULL CHECK (set_to_incubate >= 0),
    broken          integer     NOT NULL CHECK (broken >= 0),
    discarded       integer     NOT NULL CHECK (discarded >= 0),
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT every_egg_is_accounted_for CHECK (recovered = set_to_incubate + broken + discarded)
);
CREATE INDEX egg_recoveries_by_clutch ON egg_recoveries (clutch_id);

CREATE TABLE clutch_custody_links (
    id                     uuid PRIMARY KEY,
    version                integer     NOT NULL DEFAULT 0,
    clutch_id              uuid        NOT NULL REFERENCES clutches,
    holder_member_id       uuid REFERENCES members,
    holder_organisation_id uuid REFERENCES organisations,
    held_from              timestamptz NOT NULL,
    held_to                timestamptz,
    authorisation          text        NOT NULL,
    happened_at            timestamptz,
    recorded_at            timestamptz NOT NULL,
    recorded_by            uuid        NOT NULL REFERENCES accounts,
    revised_at             timestamptz,
    revised_by             uuid REFERENCES accounts,
    revision_reason        text,
    import_id              uuid REFERENCES imports,
    CONSTRAINT one_holder_answers_for_a_clutch CHECK (num_nonnulls(holder_member_id, holder_organisation_id) = 1),
    CONSTRAINT custody_of_a_clutch_lasts CHECK (held_to IS NULL OR held_to > held_from),
    CONSTRAINT custody_of_a_clutch_never_overlaps
        EXCLUDE USING gist (clutch_id WITH =, tstzrange(held_from, held_to, '[)') WITH &&)
);

CREATE TABLE hatchings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    clutch_id       uuid        NOT NULL REFERENCES clutches,
    hatched         integer     NOT NULL CHECK (hatched > 0),
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX hatchings_by_clutch ON hatchings (clutch_id);

-- No more hatch than were set.
CREATE FUNCTION count_hatchlings() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    eggs integer;
    out_of_them integer;
BEGIN
    PERFORM 1 FROM clutches WHERE id = NEW.clutch_id FOR UPDATE;
    SELECT coalesce(sum(set_to_incubate), 0) INTO eggs FROM egg_recoveries WHERE clutch_id = NEW.clutch_id;
    SELECT coalesce(sum(hatched), 0) INTO out_of_them FROM hatchings WHERE clutch_id = NEW.clutch_id AND id <> NEW.id;
    IF out_of_them + NEW.hatched > eggs THEN
        RAISE EXCEPTION 'more hatchlings than eggs' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'no_more_hatch_than_were_set';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER count_hatchlings BEFORE INSERT OR UPDATE ON hatchings FOR EACH ROW EXECUTE FUNCTION count_hatchlings();

SELECT keep_revisions('placements'), keep_revisions('clutches'), keep_revisions('egg_recoveries'),
       keep_revisions('clutch_custody_links'), keep_revisions('hatchings');
