-- Old records from tables that others kept: the file as it came, how it is to be read, what a trial made of each row, and what
-- was taken in. A file may name people, so that its octets, its examples and its rows stand in the schema of personal data.

CREATE TABLE record_files (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    file_name         text        NOT NULL CHECK (file_name ~ '[^[:space:]]'),
    octets            bigint      NOT NULL CHECK (octets > 0),
    sha256            bytea       NOT NULL CHECK (octet_length(sha256) = 32),
    -- under which its octets are kept, which come before anything is known of it
    content_id        uuid        NOT NULL CONSTRAINT a_file_has_octets_of_its_own UNIQUE,
    -- as its octets tell, surely or not
    encoding          text        NOT NULL,
    encoding_is_sure  boolean     NOT NULL,
    -- until when its octets are kept where nobody takes it in or calls it off
    keep_until        date        NOT NULL,
    called_off_at     timestamptz,
    called_off_by     uuid REFERENCES accounts,
    called_off_because text,
    erased_at         timestamptz,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT calling_off_a_file_has_time_author_reason
        CHECK (num_nonnulls(called_off_at, called_off_by, called_off_because) IN (0, 3))
);
CREATE UNIQUE INDEX a_file_of_records_is_brought_once ON record_files (sha256) WHERE called_off_at IS NULL;
CREATE INDEX record_files_by_time ON record_files (recorded_at, id);
SELECT keep_revisions('record_files');

-- The octets in their order. They come compressed by nobody, since they are read once or twice and then blanked.
CREATE TABLE personal.record_file_parts (
    content_id uuid    NOT NULL REFERENCES record_files (content_id) DEFERRABLE INITIALLY DEFERRED,
    number     integer NOT NULL CHECK (number >= 0),
    octets     bytea,
    erased_at  timestamptz,
    PRIMARY KEY (content_id, number),
    CONSTRAINT an_erased_part_is_gone CHECK ((erased_at IS NULL) = (octets IS NOT NULL))
);
ALTER TABLE personal.record_file_parts ALTER COLUMN octets SET STORAGE EXTERNAL;

-- What was found when the file was looked through: columns with examples, proposals, questions.
CREATE TABLE personal.record_file_inspections (
    record_file_id uuid PRIMARY KEY REFERENCES record_files,
    found          jsonb,
    erased_at      timestamptz,
    CONSTRAINT an_erased_inspection_is_gone CHECK ((erased_at IS NULL) = (found IS NOT NULL))
);

-- How somebody decided that a file is to be read. Another decision is another row; the last one holds.
CREATE TABLE record_readings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    record_file_id  uuid        NOT NULL REFERENCES record_files,
    -- under which it is proposed for the next file with the same headings
    name            text CHECK (name ~ '[^[:space:]]'),
    headings        jsonb       NOT NULL CHECK (jsonb_typeof(headings) = 'array'),
    settings        jsonb       NOT NULL CHECK (jsonb_typeof(settings) = 'object'),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_reading_is_of_its_file UNIQUE (id, record_file_id)
);
CREATE INDEX record_readings_by_file ON record_readings (record_file_id, recorded_at, id);
CREATE INDEX record_readings_by_headings ON record_readings (md5(headings::text));
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON record_readings FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- A trial: every row read and looked up, and nothing entered.
CREATE TABLE record_trials (
    id                  uuid PRIMARY KEY,
    version             integer     NOT NULL DEFAULT 0,
    record_file_id      uuid        NOT NULL,
    reading_id          uuid        NOT NULL,
    happened_at         timestamptz,
    recorded_at         timestamptz NOT NULL,
    recorded_by         uuid        NOT NULL REFERENCES accounts,
    revised_at          timestamptz,
    revised_by          uuid REFERENCES accounts,
    revision_reason     text,
    import_id           uuid REFERENCES imports,
    CONSTRAINT a_trial_is_of_a_reading_of_its_file
        FOREIGN KEY (reading_id, record_file_id) REFERENCES record_readings (id, record_file_id)
);
CREATE INDEX record_trials_by_file ON record_trials (record_file_id, recorded_at, id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON record_trials FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- How far a trial has come; begun anew where a node dies.
CREATE TABLE record_trial_progress (
    trial_id       uuid PRIMARY KEY REFERENCES record_trials,
    times_begun    integer     NOT NULL DEFAULT 1 CHECK (times_begun > 0),
    begun_at       timestamptz NOT NULL,
    rows_read      bigint      NOT NULL DEFAULT 0 CHECK (rows_read >= 0),
    rows_right     bigint      NOT NULL DEFAULT 0 CHECK (rows_right >= 0),
    rows_doubtful  bigint      NOT NULL DEFAULT 0 CHECK (rows_doubtful >= 0),
    rows_apart     bigint      NOT NULL DEFAULT 0 CHECK (rows_apart >= 0),
    rows_refused   bigint      NOT NULL DEFAULT 0 CHECK (rows_refused >= 0),
    -- the network it was looked up in, and what the whole file shows
    network_number integer,
    signs          jsonb,
    finished_at    timestamptz,
    failed_at      timestamptz,
    failure        text,
    CONSTRAINT a_failed_trial_says_why CHECK ((failed_at IS NULL) = (failure IS NULL)),
    CONSTRAINT a_trial_ends_once CHECK (num_nonnulls(finished_at, failed_at) < 2),
    CONSTRAINT rows_of_a_trial_add_up
        CHECK (finished_at IS NULL OR rows_read = rows_right + rows_doubtful + rows_apart + rows_refused)
);

-- What became of each row, where set-based SQL takes it from. Rows leave it again when the file is tried anew or forgotten.
CREATE TABLE personal.record_trial_rows (
    trial_id                         uuid    NOT NULL REFERENCES record_trials,
    number                           bigint  NOT NULL,
    verdict                          text    NOT NULL CHECK (verdict IN ('right', 'doubtful', 'apart', 'refused')),
    original                         text    NOT NULL,
    identifier                       text,
    -- of when: an instant, or the interval of a day or a year
    happened_at                      timestamptz,
    happened_not_before              timestamptz,
    happened_before                  timestamptz,
    -- of where, as given and as understood
    given_as                         text,
    verbatim                         text,
    decimal_latitude                 double precision,
    decimal_longitude                double precision,
    coordinate_uncertainty_in_meters double precision,
    road_link_id                     uuid,
    road_name                        text,
    carriageway                      text,
    metres_along_link                double precision,
    chainage_metres                  double precision,
    chainage_precision_metres        double precision,
    offset_metres                    double precision,
    side                             text,
    road_is_in_doubt                 boolean NOT NULL DEFAULT false,
    other_roads                      jsonb   NOT NULL DEFAULT '[]',
    -- of what
    taxon_id                         uuid,
    taxon_group_id                   uuid,
    verbatim_identification          text,
    individual_count                 integer,
    vitality                         text,
    life_stage                       text,
    sex                              text,
    cause                            text,
    remarks                          text,
    findings                         jsonb   NOT NULL DEFAULT '[]',
    PRIMARY KEY (trial_id, number)
);

-- Rows taken in: all of a trial, or the good ones.
CREATE TABLE record_takings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    trial_id        uuid        NOT NULL REFERENCES record_trials,
    which           text        NOT NULL CHECK (which IN ('all', 'good')),
    doubtful        boolean     NOT NULL,
    reason          text        NOT NULL CHECK (reason ~ '[^[:space:]]'),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX record_takings_by_trial ON record_takings (trial_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON record_takings FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE record_taking_progress (
    taking_id   uuid PRIMARY KEY REFERENCES record_takings,
    times_begun integer     NOT NULL DEFAULT 1 CHECK (times_begun > 0),
    begun_at    timestamptz NOT NULL,
    rows_taken  bigint CHECK (rows_taken >= 0),
    finished_at timestamptz,
    failed_at   timestamptz,
    failure     text,
    CONSTRAINT a_failed_taking_says_why CHECK ((failed_at IS NULL) = (failure IS NULL)),
    CONSTRAINT a_taking_ends_once CHECK (num_nonnulls(finished_at, failed_at) < 2)
);

-- The row of a file as it stood there. It never changes but that it is erased, and has no revisions to be read.
CREATE TABLE personal.original_rows (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    record_file_id  uuid        NOT NULL REFERENCES record_files,
    row_number      bigint      NOT NULL CHECK (row_number > 0),
    text            text,
    erased_at       timestamptz,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    import_id       uuid        NOT NULL REFERENCES imports,
    CONSTRAINT an_erased_row_is_gone CHECK ((erased_at IS NULL) = (text IS NOT NULL)),
    CONSTRAINT a_row_of_a_file_is_taken_once UNIQUE (record_file_id, row_number)
);
CREATE INDEX original_rows_not_erased ON personal.original_rows (recorded_at) WHERE erased_at IS NULL;

CREATE FUNCTION personal.erase_a_row_alone() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'UPDATE' AND (current_setting('culvert.erasing', true) = 'on' OR NEW.text IS NULL)
            AND (to_jsonb(NEW) - '{text,erased_at,version}'::text[]) = (to_jsonb(OLD) - '{text,erased_at,version}'::text[]) THEN
        RETURN NEW;
    END IF;
    RAISE EXCEPTION 'a row as it stood in a file is erased, and never changed otherwise'
        USING ERRCODE = 'integrity_constraint_violation';
END $$;
CREATE TRIGGER kept_until_erased BEFORE UPDATE OR DELETE ON personal.original_rows
    FOR EACH ROW EXECUTE FUNCTION personal.erase_a_row_alone();

-- From which row of a file an incident came; several calls of one incident have a row each.
CREATE TABLE incident_origins (
    original_row_id uuid PRIMARY KEY REFERENCES personal.original_rows,
    incident_id     uuid NOT NULL REFERENCES incidents
);
CREATE INDEX incident_origins_by_incident ON incident_origins (incident_id);

-- Rows of the trials of a file go where it is tried anew; not where rows of it were taken, since the others are sent from there.
CREATE FUNCTION personal.clear_trial_rows(file uuid) RETURNS void LANGUAGE plpgsql SECURITY DEFINER
SET search_path = pg_catalog, public AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM record_takings k JOIN record_trials t ON t.id = k.trial_id
               JOIN record_taking_progress p ON p.taking_id = k.id
               WHERE t.record_file_id = file AND p.finished_at IS NOT NULL) THEN
        RAISE EXCEPTION 'rows of that file were taken in' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    DELETE FROM personal.record_trial_rows WHERE trial_id IN (SELECT id FROM record_trials WHERE record_file_id = file);
END $$;
REVOKE ALL ON FUNCTION personal.clear_trial_rows(uuid) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.clear_trial_rows(uuid) TO "${applicationRole}";

-- What a file was made of is forgotten: its octets, the examples, the rows of its trials. What was taken in has its own rows.
CREATE FUNCTION personal.forget_record_file(file uuid, at timestamptz) RETURNS void LANGUAGE plpgsql SECURITY DEFINER
SET search_path = pg_catalog, public AS $$
BEGIN
    UPDATE personal.record_file_parts p SET octets = NULL, erased_at = at
    FROM record_files f WHERE f.id = file AND p.content_id = f.content_id AND p.erased_at IS NULL;
    UPDATE personal.record_file_inspections SET found = NULL, erased_at = at
    WHERE record_file_id = file AND erased_at IS NULL;
    DELETE FROM personal.record_trial_rows WHERE trial_id IN (SELECT id FROM record_trials WHERE record_file_id = file);
    UPDATE record_files SET erased_at = at, version = version + 1, revised_at = at,
        revised_by = '01920000-0000-7000-8000-000000000000', revision_reason = 'its octets are no longer kept'
    WHERE id = file AND erased_at IS NULL;
END $$;
REVOKE ALL ON FUNCTION personal.forget_record_file(uuid, timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.forget_record_file(uuid, timestamptz) TO "${applicationRole}";

SELECT belongs_by('record_files', 'content_id'), belongs_by('record_readings', 'record_file_id'), belongs_by('record_trials', 'record_file_id', 'reading_id'),
       belongs_by('record_takings', 'trial_id');
