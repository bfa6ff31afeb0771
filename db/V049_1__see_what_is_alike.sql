-- What animals show that is not notifiable, and alerts where enough of them are alike, near in place and time.
CREATE TABLE syndromes (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    name            text        NOT NULL CONSTRAINT a_syndrome_is_named_once UNIQUE,
    -- empty: any animal
    taxon_group_id  uuid REFERENCES taxon_groups,
    words           text        NOT NULL,
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);

CREATE TABLE alert_thresholds (
    id                uuid PRIMARY KEY,
    version           integer          NOT NULL DEFAULT 0,
    -- empty: of every syndrome that has none of its own
    syndrome_id       uuid REFERENCES syndromes,
    smallest_count    integer          NOT NULL CHECK (smallest_count BETWEEN 2 AND 1000),
    within_kilometres double precision NOT NULL CHECK (within_kilometres > 0 AND within_kilometres <= 1000),
    within_days       integer          NOT NULL CHECK (within_days BETWEEN 0 AND 366),
    source            text             NOT NULL,
    read_on           date             NOT NULL,
    valid_from        date             NOT NULL,
    -- the first day on which it no longer holds
    valid_to          date,
    happened_at       timestamptz,
    recorded_at       timestamptz      NOT NULL,
    recorded_by       uuid             NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_threshold_ends_after_it_begins CHECK (valid_to >= valid_from),
    CONSTRAINT one_threshold_holds_at_a_time EXCLUDE USING gist (
        (coalesce(syndrome_id, '00000000-0000-0000-0000-000000000000'::uuid)) WITH =,
        (daterange(valid_from, valid_to)) WITH &&)
);

CREATE TABLE syndrome_reports (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL,
    animal_id         uuid        NOT NULL,
    syndrome_id       uuid        NOT NULL REFERENCES syndromes,
    -- on which it was seen, in the region
    day               date        NOT NULL,
    words             text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_report_knows_the_animal_of_its_case FOREIGN KEY (animal_id, case_id) REFERENCES cases (animal_id, id),
    CONSTRAINT withdrawing_a_report_has_time_and_reason CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE UNIQUE INDEX a_case_has_a_syndrome_once ON syndrome_reports (case_id, syndrome_id) WHERE withdrawn_at IS NULL;
CREATE INDEX syndrome_reports_by_day ON syndrome_reports (syndrome_id, day) WHERE withdrawn_at IS NULL;

-- One alert for all that hang together; the figures are those of the threshold by which it was raised.
CREATE TABLE health_alerts (
    id                uuid PRIMARY KEY,
    version           integer          NOT NULL DEFAULT 0,
    syndrome_id       uuid             NOT NULL REFERENCES syndromes,
    threshold_id      uuid             NOT NULL REFERENCES alert_thresholds,
    smallest_count    integer          NOT NULL,
    within_kilometres double precision NOT NULL,
    within_days       integer          NOT NULL,
    -- into which it went on, and since when
    joined_to         uuid REFERENCES health_alerts,
    joined_at         timestamptz,
    happened_at       timestamptz      NOT NULL,
    recorded_at       timestamptz      NOT NULL,
    recorded_by       uuid             NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_alert_goes_on_in_another CHECK (joined_to <> id),
    CONSTRAINT going_on_in_another_has_a_time CHECK (num_nonnulls(joined_to, joined_at) IN (0, 2))
);
CREATE INDEX health_alerts_by_syndrome ON health_alerts (syndrome_id);

CREATE TABLE health_alert_members (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    alert_id        uuid        NOT NULL REFERENCES health_alerts,
    report_id       uuid        NOT NULL CONSTRAINT a_report_is_in_one_alert UNIQUE REFERENCES syndrome_reports,
    -- since when it has been in this alert
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX health_alert_members_by_alert ON health_alert_members (alert_id);

CREATE TABLE health_alert_acknowledgements (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    alert_id        uuid        NOT NULL REFERENCES health_alerts,
    name            text        NOT NULL,
    words           text        NOT NULL,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX health_alert_acknowledgements_by_alert ON health_alert_acknowledgements (alert_id);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON health_alert_acknowledgements FOR EACH ROW
    EXECUTE FUNCTION refuse_change();

CREATE VIEW health_alert_strictness AS
SELECT m.alert_id AS id, s.strictness
FROM health_alert_members m JOIN syndrome_reports r ON r.id = m.report_id JOIN case_strictness s ON s.id = r.case_id;
CREATE VIEW syndrome_report_holders AS
SELECT r.id, h.organisation_id FROM syndrome_reports r JOIN case_holders h ON h.id = r.case_id;

SELECT keep_revisions('syndromes'), keep_revisions('alert_thresholds'), keep_revisions('syndrome_reports'),
       keep_revisions('health_alerts'), keep_revisions('health_alert_members'),
       belongs_by('alert_thresholds', 'syndrome_id'),
       belongs_by('syndrome_reports', 'case_id', 'animal_id', 'syndrome_id'),
       belongs_by('health_alerts', 'syndrome_id', 'threshold_id'),
       belongs_by('health_alert_members', 'report_id'),
       belongs_by('health_alert_acknowledgements', 'alert_id'),
       held_by('syndrome_reports', 'case_id', 'case_holders');

INSERT INTO alert_thresholds (id, smallest_count, within_kilometres, within_days, source, read_on, valid_from, recorded_at,
    recorded_by) VALUES
    ('01920000-0000-7000-8000-000000049101', 3, 10, 14,
     'Three: a New Zealand recovery centre''s advice page, by which three or more sick or dead animals together go to a disease hotline. It says neither how near nor how soon: 10 km and 14 days are no finding of anybody''s, and the network enters its own.',
     '2026-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000');
