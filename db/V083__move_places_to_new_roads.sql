-- Places that were put on an older version of the roads are put on the new one. Each place that is moved is revised, so that
-- its row before stays in revisions; what became of each, and why some stay where they are, is told here.

CREATE TABLE place_moves (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    road_network_id uuid        NOT NULL REFERENCES road_networks,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX place_moves_by_network ON place_moves (road_network_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON place_moves FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- How far it has come; begun anew where a node dies.
CREATE TABLE place_move_progress (
    place_move_id uuid PRIMARY KEY REFERENCES place_moves,
    times_begun   integer     NOT NULL DEFAULT 1 CHECK (times_begun > 0),
    begun_at      timestamptz NOT NULL,
    places        integer     NOT NULL CHECK (places >= 0),
    finished_at   timestamptz,
    failed_at     timestamptz,
    failure       text,
    CONSTRAINT a_failed_move_says_why CHECK ((failed_at IS NULL) = (failure IS NULL)),
    CONSTRAINT a_move_ends_once CHECK (num_nonnulls(finished_at, failed_at) <= 1)
);

CREATE TABLE moved_places (
    place_move_id uuid        NOT NULL REFERENCES place_moves,
    place_id      uuid        NOT NULL REFERENCES places,
    outcome       text        NOT NULL CHECK (outcome IN ('moved', 'noRoad', 'roadInDoubt', 'otherChainage')),
    metres        double precision CHECK (metres >= 0),
    from_link_id  uuid        NOT NULL REFERENCES road_links,
    to_link_id    uuid REFERENCES road_links,
    recorded_at   timestamptz NOT NULL,
    PRIMARY KEY (place_move_id, place_id),
    CONSTRAINT a_moved_place_says_where_to
        CHECK ((outcome = 'moved') = (to_link_id IS NOT NULL) AND (to_link_id IS NULL) = (metres IS NULL))
);
CREATE INDEX moved_places_by_place ON moved_places (place_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON moved_places FOR EACH ROW EXECUTE FUNCTION refuse_change();
