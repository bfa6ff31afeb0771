-- Whoever read the audit file of a case for the authority, when and why.
CREATE TABLE inspections (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    reason          text        NOT NULL CHECK (reason ~ '[^[:space:]]'),
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX inspections_by_case ON inspections (case_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON inspections FOR EACH ROW EXECUTE FUNCTION refuse_change();
SELECT belongs_by('inspections', 'case_id');
