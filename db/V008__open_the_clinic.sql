-- Attendances at a clinic, of a living animal or of a body.

CREATE TABLE visits (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    organisation_id uuid        NOT NULL REFERENCES organisations,
    of_body         boolean     NOT NULL,
    weight_grams    double precision CHECK (weight_grams > 0),
    gravid          text        NOT NULL CHECK (gravid IN ('yes', 'no', 'unknown')),
    diagnosis       text,
    cause_of_death  text,
    left_at         timestamptz,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_visit_ends_after_it_begins CHECK (left_at IS NULL OR left_at >= happened_at)
);
CREATE INDEX visits_by_case ON visits (case_id);

CREATE TABLE findings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    visit_id        uuid        NOT NULL REFERENCES visits,
    body_part       text        NOT NULL,
    side            text        NOT NULL CHECK (side IN ('left', 'right', 'both', 'middle', 'notApplicable')),
    finding         text        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX findings_by_visit ON findings (visit_id);

-- A film is read by somebody, who may be more or less sure: a count is a reading, never a truth.
CREATE TABLE film_readings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    visit_id        uuid        NOT NULL REFERENCES visits,
    what            text        NOT NULL,
    counted         integer CHECK (counted >= 0),
    reader          text        NOT NULL,
    confidence      text        NOT NULL CHECK (confidence IN ('low', 'medium', 'high')),
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX film_readings_by_visit ON film_readings (visit_id);

CREATE TABLE procedures (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    visit_id        uuid        NOT NULL REFERENCES visits,
    procedure       text        NOT NULL,
    vet_name        text        NOT NULL,
    vet_registration text       NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX procedures_by_visit ON procedures (visit_id);

-- What a named vet sends the animal on with. The words are the vet's own.
CREATE TABLE discharges (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    visit_id         uuid        NOT NULL CONSTRAINT a_visit_ends_with_one_discharge UNIQUE REFERENCES visits,
    vet_name         text        NOT NULL,
    vet_registration text        NOT NULL,
    plan             text        NOT NULL,
    limits           text,
    review_on        date,
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports
);

SELECT keep_revisions('visits'), keep_revisions('findings'), keep_revisions('film_readings'),
       keep_revisions('procedures'), keep_revisions('discharges');
