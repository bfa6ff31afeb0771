-- Photographs of incidents and of cases. The file as it came is sealed with its digest; what is shown are copies without
-- anything that the camera wrote into it.
CREATE TABLE photographs (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    incident_id           uuid REFERENCES incidents,
    case_id               uuid REFERENCES cases,
    original_file_id      uuid        NOT NULL REFERENCES kept_files CONSTRAINT a_file_is_one_original UNIQUE,
    -- the seal
    original_sha256       bytea       NOT NULL,
    copy_file_id          uuid        NOT NULL REFERENCES kept_files,
    small_file_id         uuid        NOT NULL REFERENCES kept_files,
    -- of the original, as it is stored
    width_pixels          integer     NOT NULL CHECK (width_pixels > 0),
    height_pixels         integer     NOT NULL CHECK (height_pixels > 0),
    caption               text,
    -- otherwise it may be a carer's home, and its place stays sealed in the original
    taken_where_found     boolean     NOT NULL,
    -- what the picture says of itself (EXIF)
    decimal_latitude      double precision CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude     double precision CHECK (decimal_longitude BETWEEN -180 AND 180),
    place_verbatim        text,
    position_error_metres double precision CHECK (position_error_metres > 0),
    altitude_metres       double precision,
    direction_degrees     double precision CHECK (direction_degrees >= 0 AND direction_degrees <= 360),
    direction_from        text CHECK (direction_from IN ('trueNorth', 'magneticNorth')),
    camera_clock          timestamp,
    camera_offset         text CHECK (camera_offset ~ '^[+-][0-9]{2}:[0-9]{2}$'),
    gps_time              timestamptz,
    orientation           integer     NOT NULL CHECK (orientation BETWEEN 1 AND 8),
    notes                 jsonb       NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(notes) = 'array'),
    withdrawn_at          timestamptz,
    withdrawn_because     text,
    -- when it was taken, as whoever sent it says
    happened_at           timestamptz,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports,
    CONSTRAINT a_photograph_is_of_an_incident_or_a_case CHECK (num_nonnulls(incident_id, case_id) = 1),
    CONSTRAINT a_photograph_and_its_case UNIQUE (id, case_id),
    CONSTRAINT a_seal_is_the_digest_of_its_file
        FOREIGN KEY (original_file_id, original_sha256) REFERENCES kept_files (id, sha256),
    CONSTRAINT a_place_that_stays_sealed_is_not_read CHECK (taken_where_found OR decimal_latitude IS NULL),
    CONSTRAINT what_a_picture_says_of_its_place_is_whole
        CHECK (num_nonnulls(decimal_latitude, decimal_longitude, place_verbatim) IN (0, 3)
            AND (decimal_latitude IS NOT NULL
                 OR num_nonnulls(position_error_metres, altitude_metres, direction_degrees, direction_from) = 0)
            AND (direction_degrees IS NOT NULL OR direction_from IS NULL)),
    CONSTRAINT an_offset_is_of_a_clock CHECK (camera_offset IS NULL OR camera_clock IS NOT NULL),
    CONSTRAINT taking_back_a_photograph_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX photographs_by_incident ON photographs (incident_id) WHERE incident_id IS NOT NULL;
CREATE INDEX photographs_by_case ON photographs (case_id) WHERE case_id IS NOT NULL;

CREATE VIEW photograph_holders AS
SELECT p.id, h.organisation_id FROM photographs p JOIN incident_holders h ON h.id = p.incident_id
UNION ALL
SELECT p.id, h.organisation_id FROM photographs p JOIN case_holders h ON h.id = p.case_id;

SELECT keep_revisions('photographs');
SELECT belongs_by('photographs', 'incident_id', 'case_id', 'original_file_id', 'original_sha256', 'copy_file_id',
                  'small_file_id', 'width_pixels', 'height_pixels', 'taken_where_found', 'decimal_latitude',
                  'decimal_longitude', 'position_error_metres', 'altitude_metres', 'direction_degrees', 'direction_from',
                  'camera_clock', 'camera_offset', 'gps_time', 'orientation'),
       held_by('photographs', 'id', 'photograph_holders');

-- Whoever opened an original, when and why, and what its content was then.
CREATE TABLE photograph_openings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    photograph_id   uuid        NOT NULL REFERENCES photographs,
    reason          text        NOT NULL CHECK (reason ~ '[^[:space:]]'),
    sealed_sha256   bytea       NOT NULL,
    found_sha256    bytea       NOT NULL,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX photograph_openings_by_photograph ON photograph_openings (photograph_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON photograph_openings FOR EACH ROW EXECUTE FUNCTION refuse_change();
SELECT belongs_by('photograph_openings', 'photograph_id');

-- What a carer enters may name a photograph of the same animal.
ALTER TABLE care_entries
    ADD COLUMN photograph_id uuid,
    ADD CONSTRAINT a_photograph_of_an_entry_is_of_its_case
        FOREIGN KEY (photograph_id, case_id) REFERENCES photographs (id, case_id);
CREATE INDEX care_entries_by_photograph ON care_entries (photograph_id) WHERE photograph_id IS NOT NULL;
