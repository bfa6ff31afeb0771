-- Files of roads, land and release sites as somebody brings them, until they are taken, and what came of each. A file may name
-- who owns a piece of land, so that its octets stand in the schema of personal data.

-- Octets come before anything is known of the file, and may be read again with other answers.
CREATE TABLE personal.brought_contents (
    id         uuid PRIMARY KEY,
    -- until when they are kept where nothing is taken of them
    keep_until date NOT NULL,
    erased_at  timestamptz
);

CREATE TABLE personal.brought_file_parts (
    content_id uuid    NOT NULL REFERENCES personal.brought_contents,
    number     integer NOT NULL CHECK (number >= 0),
    octets     bytea,
    erased_at  timestamptz,
    PRIMARY KEY (content_id, number),
    CONSTRAINT an_erased_part_of_a_file_is_gone CHECK ((erased_at IS NULL) = (octets IS NOT NULL))
);
ALTER TABLE personal.brought_file_parts ALTER COLUMN octets SET STORAGE EXTERNAL;

-- Somebody's order to read a file.
CREATE TABLE brought_files (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    kind            text        NOT NULL CHECK (kind IN ('roadNetworks', 'landAreas', 'releaseSites')),
    file_name       text        NOT NULL CHECK (file_name ~ '[^[:space:]]'),
    octets          bigint      NOT NULL CHECK (octets > 0),
    sha256          bytea       NOT NULL CHECK (octet_length(sha256) = 32),
    content_id      uuid        NOT NULL REFERENCES personal.brought_contents,
    -- what was told beside the file, as the body of a form
    told            jsonb       NOT NULL CHECK (jsonb_typeof(told) = 'object'),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX brought_files_by_kind ON brought_files (kind, recorded_at, id);
CREATE INDEX brought_files_by_content ON brought_files (content_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON brought_files FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- How far the reading has come; begun anew where a node dies.
CREATE TABLE brought_file_progress (
    brought_file_id uuid PRIMARY KEY REFERENCES brought_files,
    times_begun     integer     NOT NULL DEFAULT 1 CHECK (times_begun > 0),
    begun_at        timestamptz NOT NULL,
    step            text        NOT NULL CHECK (step IN ('octets', 'features', 'joining', 'keeping')),
    done            bigint      NOT NULL DEFAULT 0 CHECK (done >= 0),
    -- how many there are; 0 where that is not known
    whole           bigint      NOT NULL DEFAULT 0 CHECK (whole >= 0),
    result          jsonb,
    finished_at     timestamptz,
    failed_at       timestamptz,
    failure         jsonb,
    CONSTRAINT a_failed_file_says_why CHECK ((failed_at IS NULL) = (failure IS NULL)),
    CONSTRAINT a_taken_file_says_what_came_of_it CHECK ((finished_at IS NULL) = (result IS NULL)),
    CONSTRAINT a_file_is_read_to_one_end CHECK (num_nonnulls(finished_at, failed_at) < 2)
);

SELECT belongs_by('brought_files', 'content_id');
