-- Road networks. An import is a new version; what is recorded on an older version stays on it, so nothing is deleted.
-- Links never change after their import: clocks and author are the network's.

CREATE TABLE road_networks (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    number          integer     NOT NULL CONSTRAINT road_networks_number_is_taken UNIQUE CHECK (number > 0),
    name            text        NOT NULL,
    -- Reference system of the source; links are kept in longitude and latitude on WGS 84
    source_crs      text        NOT NULL,
    sha256          text        NOT NULL,
    -- Which attribute of the source was read as what
    attribute_names jsonb       NOT NULL,
    -- Box of the network: it fixes the plane on which positions are put on roads
    south           double precision NOT NULL CHECK (south BETWEEN -90 AND 90),
    west            double precision NOT NULL CHECK (west BETWEEN -180 AND 180),
    north           double precision NOT NULL CHECK (north BETWEEN -90 AND 90),
    east            double precision NOT NULL CHECK (east BETWEEN -180 AND 180),
    line_count      integer     NOT NULL,
    lines_used      integer     NOT NULL,
    link_count      integer     NOT NULL CHECK (link_count > 0),
    node_count      integer     NOT NULL,
    joined_nodes    integer     NOT NULL,
    unnamed_lines   integer     NOT NULL,
    total_metres    double precision NOT NULL,
    left_out        jsonb       NOT NULL DEFAULT '{}',
    not_understood  jsonb       NOT NULL DEFAULT '{}',
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT road_networks_south_is_south CHECK (south <= north)
);

-- A piece of road between two nodes, running along increasing chainage.
CREATE TABLE road_links (
    id                    uuid PRIMARY KEY,
    road_network_id       uuid    NOT NULL REFERENCES road_networks,
    -- Number of the link within its network, from 0, as the network in memory has it; nodes likewise
    position              integer NOT NULL CHECK (position >= 0),
    from_node             integer NOT NULL,
    to_node               integer NOT NULL,
    line_key              text    NOT NULL,
    line_number           integer NOT NULL,
    road_name             text,
    ref                   text,
    road_class            text,
    speed_limit_kmh       integer CHECK (speed_limit_kmh > 0),
    aadt                  integer CHECK (aadt >= 0),
    owner                 text,
    carriageway           text,
    level                 integer NOT NULL DEFAULT 0,
    structure             text    NOT NULL DEFAULT 'none' CHECK (structure IN ('none', 'bridge', 'tunnel')),
    from_chainage_metres  double precision NOT NULL,
    length_metres         double precision NOT NULL CHECK (length_metres > 0),
    -- Line string in well-known binary, longitude before latitude
    course                bytea   NOT NULL,
    CONSTRAINT road_links_once_in_their_network UNIQUE (road_network_id, position)
);

SELECT keep_revisions('road_networks');
