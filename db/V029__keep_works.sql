-- Works against collisions: what was built or done on a stretch of road, when, and what else changed meanwhile.
CREATE TABLE works (
    id                   uuid PRIMARY KEY,
    version              integer          NOT NULL DEFAULT 0,
    kind                 text             NOT NULL,
    words                text             NOT NULL,
    road                 text             NOT NULL,
    from_chainage_metres double precision NOT NULL,
    to_chainage_metres   double precision NOT NULL,
    network_number       integer          NOT NULL,
    ends_metres          double precision NOT NULL,
    built_from           date             NOT NULL,
    -- not known while they are still being built
    built_until          date,
    -- from this day on they no longer work
    ended_on             date,
    effort_change        text,
    publicity_change     text,
    happened_at          timestamptz,
    recorded_at          timestamptz      NOT NULL,
    recorded_by          uuid             NOT NULL REFERENCES accounts,
    revised_at           timestamptz,
    revised_by           uuid REFERENCES accounts,
    revision_reason      text,
    import_id            uuid REFERENCES imports,
    CONSTRAINT works_are_of_a_known_kind CHECK (kind IN ('fence', 'crossing', 'fenceAndCrossing', 'animalDetection',
        'signs', 'reflectors', 'lowerSpeed', 'other')),
    CONSTRAINT works_go_from_a_chainage_to_a_greater_one CHECK (from_chainage_metres < to_chainage_metres),
    CONSTRAINT ends_of_works_have_a_length CHECK (ends_metres > 0 AND ends_metres <= 10000),
    CONSTRAINT works_are_built_forwards CHECK (built_until IS NULL OR built_until >= built_from),
    CONSTRAINT works_end_after_they_began CHECK (ended_on IS NULL
        OR (ended_on >= built_from AND (built_until IS NULL OR ended_on > built_until)))
);

SELECT keep_revisions('works');
