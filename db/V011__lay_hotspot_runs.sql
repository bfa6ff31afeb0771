-- Hotspot runs: what was asked, how far it has come, what came out. And the queue of work that any node may take up.

-- The scheduler's own table, as its library wants it: work that is done leaves it, so this one table may be deleted from.
CREATE TABLE scheduled_tasks (
    task_name            text        NOT NULL,
    task_instance        text        NOT NULL,
    task_data            bytea,
    execution_time       timestamptz NOT NULL,
    picked               boolean     NOT NULL,
    picked_by            text,
    last_success         timestamptz,
    last_failure         timestamptz,
    consecutive_failures integer,
    last_heartbeat       timestamptz,
    version              bigint      NOT NULL,
    priority             smallint,
    PRIMARY KEY (task_name, task_instance)
);
CREATE INDEX scheduled_tasks_by_time ON scheduled_tasks (execution_time);
CREATE INDEX scheduled_tasks_by_heartbeat ON scheduled_tasks (last_heartbeat);
GRANT DELETE ON scheduled_tasks TO "${applicationRole}";

-- A named time of year of a group of animals. From day to day of the year, both included; across the new year where the
-- first comes later. None is shipped: which season an animal has where is for those to enter who have a source.
CREATE TABLE season_windows (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    taxon_group_id  uuid        NOT NULL REFERENCES taxon_groups,
    name            text        NOT NULL,
    hemisphere      text        NOT NULL CHECK (hemisphere IN ('northern', 'southern')),
    from_month      integer     NOT NULL CHECK (from_month BETWEEN 1 AND 12),
    from_day        integer     NOT NULL CHECK (from_day BETWEEN 1 AND 31),
    to_month        integer     NOT NULL CHECK (to_month BETWEEN 1 AND 12),
    to_day          integer     NOT NULL CHECK (to_day BETWEEN 1 AND 31),
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    valid_from      date        NOT NULL,
    valid_to        date,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT season_windows_are_valid_for_some_time CHECK (valid_to IS NULL OR valid_to >= valid_from),
    CONSTRAINT season_windows_do_not_overlap EXCLUDE USING gist
        (taxon_group_id WITH =, name WITH =, hemisphere WITH =, daterange(valid_from, valid_to, '[]') WITH &&)
);

-- What was asked; it never changes. Each run is the declared one or exploratory, and that too never changes.
CREATE TABLE hotspot_runs (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    settings        jsonb       NOT NULL,
    declared        boolean     NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

-- How far a run has come; begun anew where a node dies.
CREATE TABLE hotspot_run_progress (
    run_id           uuid PRIMARY KEY REFERENCES hotspot_runs,
    times_begun      integer     NOT NULL DEFAULT 1 CHECK (times_begun > 0),
    begun_at         timestamptz NOT NULL,
    simulations_done integer     NOT NULL DEFAULT 0 CHECK (simulations_done >= 0),
    failed_at        timestamptz,
    failure          text,
    CONSTRAINT a_failed_run_says_why CHECK ((failed_at IS NULL) = (failure IS NULL))
);

-- What came out, to the byte.
CREATE TABLE hotspot_run_results (
    run_id          uuid PRIMARY KEY REFERENCES hotspot_runs,
    finished_at     timestamptz NOT NULL,
    engine_version  text        NOT NULL,
    network_number  integer     NOT NULL,
    inputs_sha256   text        NOT NULL,
    document        text        NOT NULL,
    document_sha256 text        NOT NULL
);
REVOKE UPDATE ON hotspot_run_results FROM "${applicationRole}";

SELECT keep_revisions('season_windows'), keep_revisions('hotspot_runs');
