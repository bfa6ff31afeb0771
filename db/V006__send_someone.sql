-- Going out to an incident: the gate before anyone is sent, and one going-out with its lead, helpers and outcome.

-- What the gate holds against the facts is data: its kind, source and dates beside the figure.
CREATE TABLE gate_rules (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    key             text        NOT NULL CHECK (key IN ('highSpeedKmh', 'aloneInTheDark')),
    kind            text        NOT NULL CHECK (kind IN ('statute', 'policy', 'advice')),
    figure          double precision,
    words           text        NOT NULL,
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
    CONSTRAINT gate_rules_one_at_a_time EXCLUDE USING gist
        (key WITH =, daterange(valid_from, valid_to, '[)') WITH &&)
);
INSERT INTO gate_rules (id, key, kind, figure, words, source, read_on, valid_from, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000000001', 'highSpeedKmh', 'policy', 80,
     'On a fast road nobody goes alone: the emergency number, and police attend first.',
     'Rule: a Victorian emergency-response charity''s public page, September 2025. Figure: common practice, no source; set your own.',
     '2026-11-01', '2020-01-01', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000000002', 'aloneInTheDark', 'policy', NULL,
     'After dark two people go.',
     'Common practice, no source; set your own.',
     '2026-11-01', '2020-01-01', now(), '01920000-0000-7000-8000-000000000000');

-- One passing of the gate, kept with every test and its figures.
CREATE TABLE gate_results (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    incident_id     uuid        NOT NULL REFERENCES incidents,
    tests           jsonb       NOT NULL,
    may_go          boolean     NOT NULL,
    overridden_by   uuid REFERENCES accounts,
    override_reason text,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT an_override_has_author_and_reason CHECK (num_nonnulls(overridden_by, override_reason) IN (0, 2)),
    UNIQUE (id, incident_id)
);

CREATE TABLE attendances (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    incident_id      uuid        NOT NULL REFERENCES incidents,
    gate_result_id   uuid        NOT NULL,
    police_reference text,
    departed_at      timestamptz,
    arrived_at       timestamptz,
    ended_at         timestamptz,
    outcome          text CHECK (outcome IN ('collected', 'leftWell', 'deadChecked', 'notFound', 'notAttendedUnsafe',
                                             'notAttendedNobody', 'adviceOnly', 'passedOn')),
    passed_on_to     text,
    pouch_checked    text CHECK (pouch_checked IN ('yes', 'no', 'unknown')),
    young_found      integer CHECK (young_found >= 0),
    carcass_signed   boolean,
    carcass_moved    boolean,
    scene_notes_id   uuid REFERENCES personal.words,
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    FOREIGN KEY (gate_result_id, incident_id) REFERENCES gate_results (id, incident_id),
    CONSTRAINT an_attendance_ends_with_an_outcome CHECK ((outcome IS NULL) = (ended_at IS NULL)),
    CONSTRAINT an_attendance_goes_forward CHECK (
        (arrived_at IS NULL OR departed_at IS NULL OR arrived_at >= departed_at)
        AND (ended_at IS NULL OR ended_at >= happened_at)),
    CONSTRAINT passed_on_names_the_body CHECK ((outcome IS NOT DISTINCT FROM 'passedOn') = (passed_on_to IS NOT NULL))
);
CREATE INDEX attendances_by_incident ON attendances (incident_id);

CREATE TABLE attendance_people (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    attendance_id   uuid        NOT NULL REFERENCES attendances,
    member_id       uuid        NOT NULL REFERENCES members,
    leads           boolean     NOT NULL,
    accepted_at     timestamptz,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT someone_goes_once_to_an_attendance UNIQUE (attendance_id, member_id)
);
CREATE UNIQUE INDEX an_attendance_has_one_lead ON attendance_people (attendance_id) WHERE leads;

SELECT keep_revisions('gate_rules'), keep_revisions('gate_results'), keep_revisions('attendances'),
       keep_revisions('attendance_people');

-- An incident that ended without anyone going: unsafe, nobody, advice only, passed to another body.
CREATE TABLE closings (
    id               uuid PRIMARY KEY,
    version          integer     NOT NULL DEFAULT 0,
    incident_id      uuid        NOT NULL REFERENCES incidents,
    outcome          text        NOT NULL CHECK (outcome IN ('leftWell', 'notAttendedUnsafe', 'notAttendedNobody',
                                                            'adviceOnly', 'passedOn')),
    passed_on_to     text,
    their_reference  text,
    reason           text        NOT NULL,
    happened_at      timestamptz NOT NULL,
    recorded_at      timestamptz NOT NULL,
    recorded_by      uuid        NOT NULL REFERENCES accounts,
    revised_at       timestamptz,
    revised_by       uuid REFERENCES accounts,
    revision_reason  text,
    import_id        uuid REFERENCES imports,
    CONSTRAINT a_closing_that_passes_on_names_the_body CHECK ((outcome = 'passedOn') = (passed_on_to IS NOT NULL))
);
CREATE INDEX closings_by_incident ON closings (incident_id);
SELECT keep_revisions('closings');
