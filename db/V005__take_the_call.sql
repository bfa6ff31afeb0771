-- Calls, word for word, and the incidents they tell of. An incident whose cause is a collision is what road evidence
-- counts: never a call, never an animal.

CREATE TABLE causes (
    key       text PRIMARY KEY CHECK (key ~ '^[a-z][a-zA-Z]*$'),
    name      text    NOT NULL,
    collision boolean NOT NULL
);
-- Causes of rescue in the words of published rescue statistics (Kwok et al. 2021, PLOS ONE 16(9):e0257209;
-- Taylor-Brown et al. 2019, PLOS ONE 14 e0206958).
INSERT INTO causes (key, name, collision) VALUES
    ('collisionWithVehicle', 'collision with a vehicle', true),
    ('attackByDog', 'attack by a dog', false),
    ('attackByCat', 'attack by a cat', false),
    ('entanglement', 'entanglement', false),
    ('orphaned', 'orphaned', false),
    ('unsuitablePlace', 'unsuitable place', false),
    ('disease', 'disease', false),
    ('injuryOfUnknownCause', 'injury of unknown cause', false),
    ('crossingUnhurt', 'crossing a road, not struck', false),
    ('unknown', 'not known', false);

-- A place as reported (how and verbatim) beside as understood (position, road, chainage).
CREATE TABLE places (
    id                               uuid PRIMARY KEY,
    version                          integer     NOT NULL DEFAULT 0,
    given_as                         text        NOT NULL CHECK (given_as IN ('decimalDegrees', 'degreesMinutesSeconds',
                                                 'grid', 'plusCode', 'roadAndChainage', 'crossingRoads')),
    verbatim                         text        NOT NULL,
    decimal_latitude                 double precision NOT NULL CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude                double precision NOT NULL CHECK (decimal_longitude BETWEEN -180 AND 180),
    coordinate_uncertainty_in_meters double precision NOT NULL CHECK (coordinate_uncertainty_in_meters > 0),
    road_link_id                     uuid REFERENCES road_links,
    road_name                        text,
    carriageway                      text,
    metres_along_link                double precision CHECK (metres_along_link >= 0),
    chainage_metres                  double precision,
    chainage_precision_metres        double precision CHECK (chainage_precision_metres > 0),
    offset_metres                    double precision CHECK (offset_metres >= 0),
    side                             text CHECK (side IN ('left', 'right', 'on')),
    road_is_in_doubt                 boolean     NOT NULL DEFAULT false,
    other_roads                      jsonb       NOT NULL DEFAULT '[]',
    happened_at                      timestamptz,
    recorded_at                      timestamptz NOT NULL,
    recorded_by                      uuid        NOT NULL REFERENCES accounts,
    revised_at                       timestamptz,
    revised_by                       uuid REFERENCES accounts,
    revision_reason                  text,
    import_id                        uuid REFERENCES imports,
    CONSTRAINT places_on_a_link_say_where CHECK ((road_link_id IS NULL) = (metres_along_link IS NULL))
);
CREATE INDEX places_by_position ON places (decimal_latitude, decimal_longitude);
CREATE INDEX places_by_link ON places (road_link_id);

CREATE SEQUENCE incident_numbers;

CREATE TABLE incidents (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    number          bigint      NOT NULL UNIQUE DEFAULT nextval('incident_numbers'),
    cause           text        NOT NULL REFERENCES causes,
    place_id        uuid REFERENCES places,
    -- happened_at is empty where nobody knows when; the interval says what is known about it
    happened_not_before timestamptz,
    reported_at     timestamptz NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX incidents_by_report ON incidents (reported_at);
CREATE INDEX incidents_by_cause ON incidents (cause, reported_at);
CREATE INDEX incidents_by_place ON incidents (place_id);

CREATE TABLE calls (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    incident_id       uuid        NOT NULL REFERENCES incidents,
    caller_id         uuid REFERENCES personal.people,
    words_id          uuid REFERENCES personal.words,
    place_id          uuid REFERENCES places,
    anyone_hurt       text        NOT NULL CHECK (anyone_hurt IN ('yes', 'no', 'unknown')),
    off_the_road      text        NOT NULL CHECK (off_the_road IN ('yes', 'no', 'unknown')),
    police_reference  text,
    cause             text        NOT NULL REFERENCES causes,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports
);
CREATE INDEX calls_by_incident ON calls (incident_id);

-- Animals as the caller told of them: how many, of what, how surely. Individuals are made when someone has seen them.
CREATE TABLE reported_animals (
    id                                  uuid PRIMARY KEY,
    version                             integer     NOT NULL DEFAULT 0,
    call_id                             uuid        NOT NULL REFERENCES calls,
    taxon_id                            uuid REFERENCES taxa,
    taxon_group_id                      uuid REFERENCES taxon_groups,
    verbatim_identification             text,
    identification_verification_status  text        NOT NULL CHECK (identification_verification_status IN
                                                    ('unverified', 'fromPhotograph', 'seenByMember', 'seenByVet')),
    individual_count                    integer     NOT NULL CHECK (individual_count BETWEEN 1 AND 1000),
    vitality                            text        NOT NULL CHECK (vitality IN ('alive', 'dead', 'unknown')),
    life_stage                          text,
    sex                                 text CHECK (sex IN ('female', 'male', 'unknown')),
    condition                           text,
    pouch_checked                       text        NOT NULL CHECK (pouch_checked IN ('yes', 'no', 'unknown')),
    carcass_signed                      boolean     NOT NULL DEFAULT false,
    happened_at                         timestamptz,
    recorded_at                         timestamptz NOT NULL,
    recorded_by                         uuid        NOT NULL REFERENCES accounts,
    revised_at                          timestamptz,
    revised_by                          uuid REFERENCES accounts,
    revision_reason                     text,
    import_id                           uuid REFERENCES imports
);
CREATE INDEX reported_animals_by_call ON reported_animals (call_id);

-- Two incidents that are one: a link that stands until it is undone. Calls and animals stay where they were entered,
-- so that undoing gives back both.
CREATE TABLE incident_joins (
    id                 uuid PRIMARY KEY,
    version            integer     NOT NULL DEFAULT 0,
    kept_incident_id   uuid        NOT NULL REFERENCES incidents,
    joined_incident_id uuid        NOT NULL REFERENCES incidents,
    reason             text        NOT NULL,
    undone_at          timestamptz,
    undone_by          uuid REFERENCES accounts,
    undone_reason      text,
    happened_at        timestamptz,
    recorded_at        timestamptz NOT NULL,
    recorded_by        uuid        NOT NULL REFERENCES accounts,
    revised_at         timestamptz,
    revised_by         uuid REFERENCES accounts,
    revision_reason    text,
    import_id          uuid REFERENCES imports,
    CONSTRAINT an_incident_is_not_joined_to_itself CHECK (kept_incident_id <> joined_incident_id),
    CONSTRAINT undoing_a_join_has_time_author_reason CHECK (num_nonnulls(undone_at, undone_by, undone_reason) IN (0, 3))
);
CREATE UNIQUE INDEX an_incident_is_joined_into_one_other ON incident_joins (joined_incident_id) WHERE undone_at IS NULL;
CREATE INDEX incident_joins_by_kept ON incident_joins (kept_incident_id) WHERE undone_at IS NULL;

SELECT keep_revisions('places'), keep_revisions('incidents'), keep_revisions('calls'),
       keep_revisions('reported_animals'), keep_revisions('incident_joins');

-- Every incident with the one it stands under; an incident that is joined to none stands under itself.
CREATE VIEW incident_roots AS
WITH RECURSIVE down (incident_id, root_id) AS (
    SELECT i.id, i.id FROM incidents i
    WHERE NOT EXISTS (SELECT 1 FROM incident_joins j WHERE j.joined_incident_id = i.id AND j.undone_at IS NULL)
    UNION ALL
    SELECT j.joined_incident_id, down.root_id
    FROM down JOIN incident_joins j ON j.kept_incident_id = down.incident_id AND j.undone_at IS NULL
)
SELECT incident_id, root_id FROM down;
