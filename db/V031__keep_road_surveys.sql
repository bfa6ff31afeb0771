-- Surveys of roads: somebody went along a stretch and looked for struck animals, whether any was found or not. What nobody
-- knows of a speed or of how many looked stays open.
CREATE TABLE road_surveys (
    id                   uuid PRIMARY KEY,
    version              integer          NOT NULL DEFAULT 0,
    organisation_id      uuid             NOT NULL REFERENCES organisations,
    road                 text             NOT NULL,
    from_chainage_metres double precision NOT NULL,
    to_chainage_metres   double precision NOT NULL,
    network_number       integer          NOT NULL,
    ended_at             timestamptz      NOT NULL,
    travelled_by         text             NOT NULL,
    speed_kmh            double precision CHECK (speed_kmh > 0 AND speed_kmh <= 200),
    observers            integer CHECK (observers BETWEEN 1 AND 100),
    -- keys of the groups that were looked for; empty: every kind of animal
    taxon_groups         jsonb            NOT NULL CHECK (jsonb_typeof(taxon_groups) = 'array'),
    words                text,
    withdrawn_at         timestamptz,
    withdrawn_because    text,
    -- when it began
    happened_at          timestamptz      NOT NULL,
    recorded_at          timestamptz      NOT NULL,
    recorded_by          uuid             NOT NULL REFERENCES accounts,
    revised_at           timestamptz,
    revised_by           uuid REFERENCES accounts,
    revision_reason      text,
    import_id            uuid REFERENCES imports,
    CONSTRAINT surveys_are_travelled_in_a_known_way CHECK (travelled_by IN ('motorVehicle', 'bicycle', 'foot', 'other')),
    CONSTRAINT surveys_go_from_a_chainage_to_a_greater_one CHECK (from_chainage_metres < to_chainage_metres),
    CONSTRAINT surveys_end_within_a_day_of_their_beginning CHECK (ended_at > happened_at
        AND ended_at <= happened_at + interval '24 hours'),
    CONSTRAINT withdrawing_a_survey_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX road_surveys_by_beginning ON road_surveys (happened_at);

SELECT keep_revisions('road_surveys');
