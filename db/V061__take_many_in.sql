-- Surges: a fire, a flood or a heat in which many animals come at once to a tent, under temporary numbers by sector.

INSERT INTO causes (key, name, collision) VALUES
    ('fire', 'fire', false),
    ('flood', 'flood', false),
    ('heat', 'heat', false),
    ('storm', 'storm', false),
    ('spill', 'spill of oil or another substance', false);

CREATE TABLE surges (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    name            text        NOT NULL,
    kind            text        NOT NULL CHECK (kind IN ('fire', 'flood', 'heat', 'storm', 'spill', 'other')),
    -- what it is, where it is none of these
    kind_words      text,
    tent_words      text        NOT NULL,
    tent_place_id   uuid REFERENCES places,
    -- who holds the animals at the tent, unless a form says otherwise
    holder_id       uuid        NOT NULL REFERENCES members,
    ended_at        timestamptz,
    ended_by        uuid REFERENCES accounts,
    -- when it began
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT another_kind_of_surge_is_told_in_words CHECK ((kind = 'other') = (kind_words IS NOT NULL)),
    CONSTRAINT ending_a_surge_has_time_and_name CHECK (num_nonnulls(ended_at, ended_by) IN (0, 2)),
    CONSTRAINT a_surge_ends_after_it_began CHECK (ended_at > happened_at)
);

CREATE TABLE surge_sectors (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    surge_id        uuid        NOT NULL REFERENCES surges,
    code            text        NOT NULL CHECK (code ~ '^[A-Z0-9]{1,8}$'),
    words           text        NOT NULL,
    area_words      text,
    -- a Polygon or MultiPolygon of GeoJSON
    area            jsonb CHECK (area ->> 'type' IN ('Polygon', 'MultiPolygon')),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_sector_of_a_surge_has_its_own_code UNIQUE (surge_id, code),
    CONSTRAINT a_sector_and_its_surge UNIQUE (id, surge_id)
);

-- One animal taken in at the tent. Its temporary number leads to its case for ever.
CREATE TABLE surge_intakes (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    surge_id         uuid        NOT NULL REFERENCES surges,
    sector_id        uuid        NOT NULL,
    case_id          uuid        NOT NULL CONSTRAINT a_case_is_taken_in_once UNIQUE REFERENCES cases,
    temporary_number text        NOT NULL CHECK (temporary_number ~ '^\S(.{0,38}\S)?$'),
    -- the count in the sector, where the server gave the number; empty: it was written on the animal's band or box
    running          integer CHECK (running > 0),
    holder_id        uuid        NOT NULL REFERENCES members,
    vitality         text        NOT NULL CHECK (vitality IN ('alive', 'dead')),
    -- the categories of SALT mass casualty triage but for the dead: E. B. Lerner et al., Mass casualty triage, Disaster
    -- Med. Public Health Prep. 2 (Suppl. 1), 2008, S25-S34
    triage           text CHECK (triage IN ('immediate', 'expectant', 'delayed', 'minimal')),
    condition        text,
    -- the latest it can have been found, where only a span is known from found_not_before on; empty: when it came
    found_at         timestamptz,
    found_not_before timestamptz,
    -- when it came to the tent
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    CONSTRAINT an_animal_comes_from_a_sector_of_the_surge
        FOREIGN KEY (sector_id, surge_id) REFERENCES surge_sectors (id, surge_id),
    CONSTRAINT a_running_number_is_given_once UNIQUE (sector_id, running),
    CONSTRAINT a_dead_animal_is_in_no_triage CHECK (vitality = 'alive' OR triage IS NULL),
    CONSTRAINT an_animal_is_found_before_it_comes CHECK (found_at <= happened_at AND found_not_before <= coalesce(found_at, happened_at))
);
-- However it is written
CREATE UNIQUE INDEX a_temporary_number_is_given_once ON surge_intakes (surge_id, upper(temporary_number));
CREATE INDEX surge_intakes_by_number ON surge_intakes (upper(temporary_number));

CREATE VIEW surge_intake_holders AS
SELECT i.id, h.organisation_id FROM surge_intakes i JOIN case_holders h ON h.id = i.case_id;

SELECT keep_revisions('surges'), keep_revisions('surge_sectors'), keep_revisions('surge_intakes');
SELECT belongs_by('surges', 'tent_place_id'), belongs_by('surge_sectors', 'surge_id', 'code'),
       belongs_by('surge_intakes', 'surge_id', 'sector_id', 'case_id', 'temporary_number', 'running', 'holder_id');
SELECT held_by('surge_intakes', 'case_id', 'case_holders');

-- Nobody comes to the tent before the surge began or after it ended, whichever is entered first.
CREATE FUNCTION require_surge_lasts() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    outside boolean;
BEGIN
    IF TG_TABLE_NAME = 'surge_intakes' THEN
        SELECT NEW.happened_at < s.happened_at OR NEW.happened_at > s.ended_at INTO outside
        FROM surges s WHERE s.id = NEW.surge_id FOR SHARE;
    ELSE
        SELECT bool_or(i.happened_at < NEW.happened_at OR i.happened_at > NEW.ended_at) INTO outside
        FROM surge_intakes i WHERE i.surge_id = NEW.id;
    END IF;
    IF outside THEN
        RAISE EXCEPTION 'outside of the surge' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'who_comes_to_a_tent_comes_while_it_stands', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER who_comes_to_a_tent_comes_while_it_stands BEFORE INSERT ON surge_intakes
    FOR EACH ROW EXECUTE FUNCTION require_surge_lasts();
CREATE TRIGGER who_comes_to_a_tent_comes_while_it_stands BEFORE UPDATE OF happened_at, ended_at ON surges
    FOR EACH ROW EXECUTE FUNCTION require_surge_lasts();

-- A group in which a kingdom stands may be of any animal: nobody knows its kind yet, and it is kept as strictly as any.
CREATE OR REPLACE VIEW taxon_group_strictness AS
SELECT g.id, CASE WHEN EXISTS (SELECT 1 FROM taxa t WHERE t.taxon_group_id = g.id AND t.taxon_rank = 'kingdom')
                  THEN (SELECT strictness FROM unknown_strictness)
                  ELSE coalesce((SELECT max(strictness(t.sensitivity_grid)) FROM taxa t WHERE t.taxon_group_id = g.id),
                                (SELECT strictness FROM unknown_strictness)) END AS strictness
FROM taxon_groups g;
