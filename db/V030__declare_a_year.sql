-- Runs that were decided on together, before anyone looked: each is made at its part of one error rate.
CREATE TABLE annual_runs (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    plan            text        NOT NULL CHECK (plan <> ''),
    cells           integer     NOT NULL CHECK (cells > 0),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

ALTER TABLE hotspot_runs ADD COLUMN annual_run_id uuid REFERENCES annual_runs;
CREATE INDEX hotspot_runs_by_annual_run ON hotspot_runs (annual_run_id) WHERE annual_run_id IS NOT NULL;

SELECT keep_revisions('annual_runs');
