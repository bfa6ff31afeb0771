-- A run that somebody called off before it was done; what was asked stays to be read.
CREATE TABLE hotspot_run_cancellations (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    run_id          uuid        NOT NULL REFERENCES hotspot_runs,
    reason          text        NOT NULL CHECK (reason <> ''),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_run_is_called_off_once UNIQUE (run_id)
);

SELECT keep_revisions('hotspot_run_cancellations');
