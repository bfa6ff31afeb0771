-- Growth: tables that the network loads and a vet adopts, measurements of bodies, and what no age may be told from. No figure
-- of growth is shipped.

ALTER TABLE animals
    -- when it was born or hatched, and by how many days that may be wrong
    ADD COLUMN born_on         date,
    ADD COLUMN born_doubt_days integer CHECK (born_doubt_days >= 0),
    ADD CONSTRAINT doubt_of_a_birth_has_a_birth CHECK (born_doubt_days IS NULL OR born_on IS NOT NULL);

CREATE FUNCTION is_body_measure(measure text) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
    SELECT measure IN ('weight', 'head', 'body', 'tail', 'ear', 'forearm', 'arm', 'leg', 'pes', 'wing', 'tarsus',
                       'carapaceLength', 'carapaceWidth', 'plastronLength')
$$;

-- Measures from which no age is told, by taxon with its lower ranks.
CREATE TABLE age_cautions (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    scientific_name text        NOT NULL,
    measure         text        NOT NULL CHECK (is_body_measure(measure)),
    words           text        NOT NULL,
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT an_age_caution_is_entered_once UNIQUE (scientific_name, measure)
);

-- Ages in days and values in grams or millimetres, as a list of objects with ageDays and value.
CREATE FUNCTION growth_rows_rise(given jsonb, values_too text) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(bool_and(age > before AND CASE values_too WHEN 'strictly' THEN value > last
                                                              WHEN 'notFall' THEN value >= last ELSE true END), true)
    FROM (SELECT (e ->> 'ageDays')::double precision AS age, (e ->> 'value')::double precision AS value,
                 lag((e ->> 'ageDays')::double precision) OVER (ORDER BY n) AS before,
                 lag((e ->> 'value')::double precision) OVER (ORDER BY n) AS last
          FROM jsonb_array_elements(given) WITH ORDINALITY AS x (e, n)) w
    WHERE before IS NOT NULL
$$;

CREATE TABLE growth_tables (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    key             text        NOT NULL CONSTRAINT a_growth_table_has_its_own_key UNIQUE,
    name            text        NOT NULL,
    taxon_id        uuid        NOT NULL REFERENCES taxa,
    sex             text        NOT NULL CHECK (sex IN ('female', 'male', 'both')),
    measure         text        NOT NULL CHECK (is_body_measure(measure)),
    -- how it is taken
    measure_words   text,
    -- whether an age may be told from it, and not only what is expected at an age
    estimates_age   boolean     NOT NULL,
    rows            jsonb       NOT NULL,
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    licence         text        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_growth_table_has_two_rows
        CHECK (CASE WHEN jsonb_typeof(rows) = 'array' THEN jsonb_array_length(rows) >= 2 ELSE false END),
    CONSTRAINT growth_is_told_in_ages_and_values
        CHECK (NOT jsonb_path_exists(rows, '$[*] ? (!(@.ageDays >= 0) || !(@.value > 0))')),
    CONSTRAINT ages_of_a_growth_table_rise CHECK (growth_rows_rise(rows, 'no')),
    -- A chick may lose weight before it flies; a bone grows no shorter
    CONSTRAINT lengths_do_not_fall CHECK (measure = 'weight' OR growth_rows_rise(rows, 'notFall')),
    CONSTRAINT what_tells_an_age_rises CHECK (NOT estimates_age OR growth_rows_rise(rows, 'strictly'))
);

CREATE TABLE growth_table_adoptions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    table_id          uuid        NOT NULL REFERENCES growth_tables,
    table_revision    integer     NOT NULL,
    vet_name          text        NOT NULL,
    vet_registration  text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was adopted
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_an_adopted_table_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX growth_table_adoptions_by_table ON growth_table_adoptions (table_id);

CREATE TABLE body_measurements (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    measure           text        NOT NULL CHECK (is_body_measure(measure)),
    -- grams for a weight, millimetres for the others
    value             double precision NOT NULL CHECK (value > 0 AND value < 'Infinity'),
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
    CONSTRAINT withdrawing_a_body_measurement_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX body_measurements_by_case ON body_measurements (case_id, happened_at);
CREATE VIEW body_measurement_holders AS
SELECT b.id, h.organisation_id FROM body_measurements b JOIN case_holders h ON h.id = b.case_id;

SELECT keep_revisions('age_cautions'), keep_revisions('growth_tables'), keep_revisions('growth_table_adoptions'),
       keep_revisions('body_measurements');
SELECT belongs_by('age_cautions', 'scientific_name', 'measure'), belongs_by('growth_tables', 'key', 'taxon_id', 'measure'),
       belongs_by('growth_table_adoptions', 'table_id', 'table_revision'),
       belongs_by('body_measurements', 'case_id', 'measure');
SELECT held_by('body_measurements', 'case_id', 'case_holders');

-- A taxon and its lower ranks; a table of a higher rank is about them too.
CREATE FUNCTION require_measure_tells_age() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NEW.estimates_age AND EXISTS (
            SELECT 1 FROM taxa t JOIN age_cautions c ON c.measure = NEW.measure
                AND (t.scientific_name = c.scientific_name OR starts_with(t.scientific_name, c.scientific_name || ' ')
                     OR starts_with(c.scientific_name, t.scientific_name || ' '))
            WHERE t.id = NEW.taxon_id) THEN
        RAISE EXCEPTION 'no age from this measure' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'no_age_is_told_from_what_does_not_tell_it', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER no_age_is_told_from_what_does_not_tell_it BEFORE INSERT OR UPDATE ON growth_tables
    FOR EACH ROW EXECUTE FUNCTION require_measure_tells_age();

CREATE FUNCTION require_growth_table_as_it_stands() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (SELECT 1 FROM growth_tables t
                   WHERE t.id = NEW.table_id AND t.version + 1 = NEW.table_revision FOR SHARE) THEN
        RAISE EXCEPTION 'another revision of the table' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'a_growth_table_is_adopted_as_it_stands', TABLE = TG_TABLE_NAME;
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER a_growth_table_is_adopted_as_it_stands BEFORE INSERT ON growth_table_adoptions
    FOR EACH ROW EXECUTE FUNCTION require_growth_table_as_it_stands();

INSERT INTO age_cautions (id, scientific_name, measure, words, source, read_on, recorded_at, recorded_by)
SELECT ('01920000-0000-7000-8000-000000063' || row.id)::uuid, row.name, row.measure, row.words,
       'W. E. Poole, S. M. Carpenter and J. T. Wood, Growth of grey kangaroos and the reliability of age determination from body measurements, Australian Wildlife Research 9, 1982.',
       '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'
FROM (VALUES
    ('001', 'Macropus giganteus', 'weight', 'Of a grey kangaroo no age is told from its weight: ear, tail and weight are unreliable for age, head and leg are the best.'),
    ('002', 'Macropus giganteus', 'tail', 'Of a grey kangaroo no age is told from its tail: ear, tail and weight are unreliable for age, head and leg are the best.'),
    ('003', 'Macropus giganteus', 'ear', 'Of a grey kangaroo no age is told from its ear: ear, tail and weight are unreliable for age, head and leg are the best.'),
    ('004', 'Macropus fuliginosus', 'weight', 'Of a grey kangaroo no age is told from its weight. This was read of the eastern grey kangaroo, and is taken over for the western one out of caution.')
) AS row (id, name, measure, words);
