-- A release as a whole record: what the weather and the light were like, how the animals were let go, who was there, and
-- pictures of it. What nobody recorded of earlier releases stays open.
ALTER TABLE releases
    ADD COLUMN weather                  text,
    ADD COLUMN light                    text CHECK (light IN ('day', 'twilight', 'night')),
    ADD COLUMN manner                   text CHECK (manner IN ('hard', 'soft')),
    -- the last day on which they are meant to be fed at the place
    ADD COLUMN support_feeding_until    date,
    ADD COLUMN support_feeding_ended_at timestamptz,
    ADD COLUMN support_feeding_ended_by text,
    ADD COLUMN others_present           text,
    -- whether they were raised together; empty: nobody knows
    ADD COLUMN raised_together          boolean,
    ADD CONSTRAINT only_a_soft_release_has_support_feeding CHECK (manner IS NOT DISTINCT FROM 'soft'
        OR num_nonnulls(support_feeding_until, support_feeding_ended_at, support_feeding_ended_by) = 0),
    ADD CONSTRAINT ending_support_feeding_has_time_and_name
        CHECK (num_nonnulls(support_feeding_ended_at, support_feeding_ended_by) IN (0, 2)),
    ADD CONSTRAINT support_feeding_ends_after_the_release CHECK (support_feeding_ended_at >= happened_at);

-- Files as they were handed in: pictures of releases and papers about animals. They are kept as they are, apart from what is
-- said of them, so that saying something else of one does not write the file again.
CREATE TABLE release_files (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    media_type      text        NOT NULL CHECK (media_type IN ('application/pdf', 'image/png', 'image/jpeg')),
    content         bytea       NOT NULL CHECK (octet_length(content) > 0),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON release_files FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE release_photographs (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    release_id        uuid        NOT NULL REFERENCES releases,
    file_id           uuid        NOT NULL REFERENCES release_files CONSTRAINT a_file_is_one_photograph UNIQUE,
    caption           text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was taken
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_a_photograph_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX release_photographs_by_release ON release_photographs (release_id);
SELECT keep_revisions('release_photographs');

-- One line more in what is asked by the name of a table; whatever other lines there are stay.
CREATE FUNCTION belongs_by(of_table text, VARIADIC columns text[]) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
    told text := pg_get_functiondef('never_changes(text)'::regprocedure);
    last text := 'ELSE ARRAY[]::text[]';
BEGIN
    IF position(last IN told) = 0 THEN
        RAISE EXCEPTION 'never_changes has another form';
    END IF;
    EXECUTE replace(told, last, format('WHEN %L THEN %L::text[] %s', of_table, columns, last));
END $$;

CREATE FUNCTION held_by(of_table text, belongs_by text, holders text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
    EXECUTE 'CREATE OR REPLACE VIEW record_holders AS ' || rtrim(pg_get_viewdef('record_holders'::regclass), '; ')
        || format(' UNION ALL SELECT r.id, h.organisation_id FROM %I r JOIN %I h ON h.id = r.%I', of_table, holders,
                  belongs_by);
END $$;

SELECT belongs_by('release_photographs', 'release_id', 'file_id'),
       held_by('release_photographs', 'release_id', 'release_holders');
