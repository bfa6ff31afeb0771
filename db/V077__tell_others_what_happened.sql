-- Others who are told by a message that something happened: a message names the record and says nothing of it.
CREATE TABLE event_subscriptions (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    -- where the messages go
    address         text        NOT NULL CHECK (address ~ '^https?://'),
    -- whose it is and what for
    purpose         text        NOT NULL,
    types           jsonb       NOT NULL CHECK (jsonb_typeof(types) = 'array' AND types <> '[]'),
    ended_at        timestamptz,
    ended_because   text,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT ending_a_subscription_has_time_and_reason CHECK (num_nonnulls(ended_at, ended_because) IN (0, 2))
);
SELECT keep_revisions('event_subscriptions'), belongs_by('event_subscriptions', 'address', 'types');

-- With which messages are signed: apart from the row, so that no revision and no answer has it.
CREATE TABLE event_secrets (
    subscription_id uuid PRIMARY KEY REFERENCES event_subscriptions,
    secret          bytea NOT NULL CHECK (octet_length(secret) BETWEEN 24 AND 64)
);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON event_secrets FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE events (
    id      uuid PRIMARY KEY DEFAULT gen_random_uuid(),
    type    text        NOT NULL CHECK (type ~ '^culvert\.[a-z-]+\.[a-z-]+$'),
    -- the record, as it stands under /api
    subject text        NOT NULL CHECK (subject ~ '^[a-z-]+/[0-9a-f-]{36}$'),
    at      timestamptz NOT NULL
);
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON events FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE event_deliveries (
    id              uuid PRIMARY KEY DEFAULT gen_random_uuid(),
    event_id        uuid        NOT NULL REFERENCES events,
    subscription_id uuid        NOT NULL REFERENCES event_subscriptions,
    attempts        integer     NOT NULL DEFAULT 0,
    -- empty: it is over
    next_attempt_at timestamptz,
    delivered_at    timestamptz,
    given_up_at     timestamptz,
    last_status     integer,
    last_words      text,
    CONSTRAINT an_event_is_told_to_each_once UNIQUE (event_id, subscription_id),
    CONSTRAINT a_delivery_is_due_or_over CHECK (num_nonnulls(next_attempt_at, delivered_at, given_up_at) = 1)
);
CREATE INDEX event_deliveries_due ON event_deliveries (next_attempt_at) WHERE next_attempt_at IS NOT NULL;
CREATE INDEX event_deliveries_by_subscription ON event_deliveries (subscription_id, id);

-- In the transaction of what happened, and only where somebody wants to hear it: the type, the first part of the record's
-- address, and the column that has its identifier.
CREATE FUNCTION tell_event() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    told uuid := gen_random_uuid();
BEGIN
    IF EXISTS (SELECT 1 FROM event_subscriptions s WHERE s.ended_at IS NULL AND s.types ? TG_ARGV[0]) THEN
        INSERT INTO events (id, type, subject, at)
        VALUES (told, TG_ARGV[0], TG_ARGV[1] || '/' || (to_jsonb(NEW) ->> TG_ARGV[2]), now());
        INSERT INTO event_deliveries (event_id, subscription_id, next_attempt_at)
        SELECT told, s.id, now() FROM event_subscriptions s WHERE s.ended_at IS NULL AND s.types ? TG_ARGV[0];
    END IF;
    RETURN NULL;
END $$;

CREATE TRIGGER tell_event AFTER INSERT ON incidents FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.incident.logged', 'incidents', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON closings FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.incident.closed', 'incidents', 'incident_id');
CREATE TRIGGER tell_event AFTER INSERT ON cases FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.case.opened', 'cases', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON fates FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.case.ended', 'cases', 'case_id');
CREATE TRIGGER tell_event AFTER INSERT ON releases FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.release.made', 'releases', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON disease_suspicions FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.disease-suspicion.told', 'disease-suspicions', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON health_alerts FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.health-alert.raised', 'health-alerts', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON hotspot_run_results FOR EACH ROW
    EXECUTE FUNCTION tell_event('culvert.hotspot-run.computed', 'hotspot-runs', 'run_id');
