-- Annual returns: the forms of authorities as data, what was signed and frozen, and what changed since.

-- Documents that the server writes itself are kept beside those that were handed in.
ALTER TABLE kept_files
    DROP CONSTRAINT kept_files_media_type_check,
    ADD CONSTRAINT kept_files_media_type_check CHECK (media_type IN ('application/pdf', 'image/png', 'image/jpeg',
        'application/json', 'text/csv;charset=UTF-8'));

CREATE TABLE return_forms (
    id                   uuid PRIMARY KEY,
    version              integer     NOT NULL DEFAULT 0,
    jurisdiction         text        NOT NULL CHECK (jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    title                text        NOT NULL,
    -- a year from this day on, or periods told one by one
    start_month          integer,
    start_day            integer,
    due_month            integer,
    due_day              integer,
    periods              jsonb       NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(periods) = 'array'),
    -- what it shows under which heading, in order
    columns              jsonb       NOT NULL CHECK (jsonb_typeof(columns) = 'array' AND columns <> '[]'),
    -- an end in the network's words, and its word of that authority
    vocabulary           jsonb       NOT NULL CHECK (jsonb_typeof(vocabulary) = 'object'),
    -- what counts as one
    counts_eggs          boolean     NOT NULL,
    counts_hatchlings    boolean     NOT NULL,
    counts_bodies        boolean     NOT NULL,
    -- whether what members hold counts for their organisation
    counts_members       boolean     NOT NULL,
    source               text        NOT NULL,
    read_on              date        NOT NULL,
    review_by            date        NOT NULL,
    valid_from           date        NOT NULL,
    valid_to             date,
    happened_at          timestamptz,
    recorded_at          timestamptz NOT NULL,
    recorded_by          uuid        NOT NULL REFERENCES accounts,
    revised_at           timestamptz,
    revised_by           uuid REFERENCES accounts,
    revision_reason      text,
    import_id            uuid REFERENCES imports,
    CONSTRAINT a_form_has_years_or_periods
        CHECK (CASE WHEN periods = '[]' THEN num_nonnulls(start_month, start_day, due_month, due_day) = 4
                    ELSE num_nonnulls(start_month, start_day, due_month, due_day) = 0 END),
    -- the days of a year that is none of 366
    CONSTRAINT a_year_of_a_form_begins_on_a_day
        CHECK (start_month IS NULL OR make_date(2025, start_month, start_day) IS NOT NULL),
    CONSTRAINT a_form_is_due_on_a_day CHECK (due_month IS NULL OR make_date(2025, due_month, due_day) IS NOT NULL),
    CONSTRAINT a_form_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_form_is_read_again_later CHECK (review_by > read_on)
);
SELECT keep_revisions('return_forms');

-- A return that was signed. What was signed are the octets of its files; names of people are beside them, so that these can
-- be erased and the octets stay.
CREATE TABLE annual_returns (
    id                     uuid PRIMARY KEY,
    version                integer     NOT NULL DEFAULT 0,
    form_id                uuid        NOT NULL REFERENCES return_forms,
    holder_member_id       uuid REFERENCES members,
    holder_organisation_id uuid REFERENCES organisations,
    from_day               date        NOT NULL,
    to_day                 date        NOT NULL,
    due_on                 date        NOT NULL,
    -- it counts what was recorded until then
    known_at               timestamptz NOT NULL,
    signed_by              text        NOT NULL,
    capacity               text        NOT NULL,
    signed_on              date        NOT NULL,
    document_file_id       uuid        NOT NULL,
    document_sha256        bytea       NOT NULL,
    table_file_id          uuid        NOT NULL,
    table_sha256           bytea       NOT NULL,
    happened_at            timestamptz NOT NULL,
    recorded_at            timestamptz NOT NULL,
    recorded_by            uuid        NOT NULL REFERENCES accounts,
    revised_at             timestamptz,
    revised_by             uuid REFERENCES accounts,
    revision_reason        text,
    import_id              uuid REFERENCES imports,
    CONSTRAINT a_return_is_of_one_holder CHECK (num_nonnulls(holder_member_id, holder_organisation_id) = 1),
    CONSTRAINT a_return_is_signed_once UNIQUE NULLS NOT DISTINCT
        (form_id, holder_member_id, holder_organisation_id, from_day),
    CONSTRAINT a_return_ends_after_it_begins CHECK (to_day >= from_day),
    CONSTRAINT a_return_is_signed_when_its_period_is_over CHECK (signed_on > to_day),
    CONSTRAINT a_return_is_frozen_with_its_digest
        FOREIGN KEY (document_file_id, document_sha256) REFERENCES kept_files (id, sha256),
    CONSTRAINT a_return_table_is_frozen_with_its_digest
        FOREIGN KEY (table_file_id, table_sha256) REFERENCES kept_files (id, sha256)
);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON annual_returns FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE return_supplements (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    return_id        uuid        NOT NULL REFERENCES annual_returns,
    -- the first is 1
    number           integer     NOT NULL CHECK (number > 0),
    known_at         timestamptz NOT NULL,
    reason           text        NOT NULL CHECK (reason ~ '[^[:space:]]'),
    signed_by        text        NOT NULL,
    capacity         text        NOT NULL,
    signed_on        date        NOT NULL,
    document_file_id uuid        NOT NULL,
    document_sha256  bytea       NOT NULL,
    table_file_id    uuid        NOT NULL,
    table_sha256     bytea       NOT NULL,
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    CONSTRAINT supplements_of_a_return_are_numbered UNIQUE (return_id, number),
    CONSTRAINT a_supplement_is_frozen_with_its_digest
        FOREIGN KEY (document_file_id, document_sha256) REFERENCES kept_files (id, sha256),
    CONSTRAINT a_supplement_table_is_frozen_with_its_digest
        FOREIGN KEY (table_file_id, table_sha256) REFERENCES kept_files (id, sha256)
);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON return_supplements FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- The sum of the counts of a list of {"how": ..., "count": ...}.
CREATE FUNCTION sum_of_counts(counts jsonb) RETURNS bigint LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE AS
$$ SELECT coalesce(sum((entry ->> 'count')::bigint), 0)::bigint FROM jsonb_array_elements(counts) entry $$;

-- All lines as they were when the return was signed, and again with each supplement, so that the next one can say what
-- changed. They name no person.
CREATE TABLE return_lines (
    number        bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
    return_id     uuid    NOT NULL REFERENCES annual_returns,
    supplement_id uuid REFERENCES return_supplements,
    sort          text    NOT NULL CHECK (sort IN ('line', 'transfer', 'doubt', 'leftOut')),
    line          jsonb   NOT NULL CHECK (jsonb_typeof(line) = 'object'),
    opening       integer CHECK (opening >= 0),
    came_in       integer CHECK (came_in >= 0),
    went_out      integer CHECK (went_out >= 0),
    closing       integer CHECK (closing >= 0),
    CONSTRAINT a_line_of_a_return_has_its_sums
        CHECK (num_nonnulls(opening, came_in, went_out, closing) = CASE sort WHEN 'line' THEN 4 ELSE 0 END),
    CONSTRAINT opening_and_in_are_out_and_closing
        CHECK (sort <> 'line' OR opening + came_in = went_out + closing),
    CONSTRAINT the_parts_of_a_line_are_its_sums
        CHECK (sort <> 'line'
            OR (line ->> 'opening')::integer = opening AND (line ->> 'closing')::integer = closing
               AND sum_of_counts(line -> 'cameInBy') = came_in AND sum_of_counts(line -> 'wentOutBy') = went_out)
);
CREATE INDEX return_lines_by_return ON return_lines (return_id, number);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON return_lines FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- A return is as much its organisation's as its holder is.
CREATE VIEW annual_return_holders AS
SELECT r.id, coalesce(r.holder_organisation_id, m.organisation_id) AS organisation_id
FROM annual_returns r LEFT JOIN members m ON m.id = r.holder_member_id;
CREATE VIEW return_supplement_holders AS
SELECT s.id, h.organisation_id FROM return_supplements s JOIN annual_return_holders h ON h.id = s.return_id;

SELECT belongs_by('annual_returns', 'form_id', 'holder_member_id', 'holder_organisation_id'),
       belongs_by('return_supplements', 'return_id'),
       held_by('annual_returns', 'id', 'annual_return_holders'),
       held_by('return_supplements', 'id', 'return_supplement_holders');

-- One example, of no authority, that shows what a form can say.
INSERT INTO return_forms (id, jurisdiction, title, start_month, start_day, due_month, due_day, columns, vocabulary,
    counts_eggs, counts_hatchlings, counts_bodies, counts_members, source, read_on, review_by, valid_from, recorded_at,
    recorded_by)
VALUES ('01920000-0000-7000-8000-000000073001', 'XX', 'Example of a return: what was held, came, went and is held', 7, 1, 9, 30,
    '[{"shows": "scientificName", "heading": "species"}, {"shows": "vernacularName", "heading": "common name"},
      {"shows": "kind", "heading": "counted as"}, {"shows": "opening", "heading": "held at the start"},
      {"shows": "cameIn", "heading": "came in"}, {"shows": "cameInTransferred", "heading": "of these from other holders"},
      {"shows": "wentOut", "heading": "went out"}, {"shows": "wentOutTransferred", "heading": "of these to other holders"},
      {"shows": "wentOutByWord", "heading": "of these"}, {"shows": "closing", "heading": "held at the end"}]',
    '{"released": "released", "died": "died", "euthanased": "euthanased", "deadWhenFound": "came dead",
      "diedOnTheWay": "came dead", "deadOnReachingClinic": "came dead", "leftWell": "left where it was", "escaped": "escaped",
      "unknown": "not known", "hatched": "hatched", "failed": "failed"}',
    true, true, true, true,
    'Common practice, no source: an example of no authority. Enter the form of your own authority, with where you read it.'
        || ' Check your local code.',
    '2026-11-29', '2027-11-29', '2020-01-01', now(), '01920000-0000-7000-8000-000000000000');
