-- Answers to keyed requests may show personal data: they live with those, for a day. What a record's second clock says is
-- never written anew.

DROP TABLE idempotency_keys;
CREATE TABLE personal.idempotency_keys (
    account_id   uuid        NOT NULL REFERENCES accounts,
    key          text        NOT NULL,
    request_hash text        NOT NULL,
    status       integer     NOT NULL,
    location     text,
    tag          text,
    media_type   text,
    -- empty where there was none, and where what it showed was erased since
    body         bytea       NOT NULL,
    recorded_at  timestamptz NOT NULL,
    PRIMARY KEY (account_id, key)
);
CREATE INDEX idempotency_keys_by_age ON personal.idempotency_keys (recorded_at);
REVOKE UPDATE ON personal.idempotency_keys FROM "${applicationRole}";

-- The application may delete nothing; this is the one way that keys go, and only old ones do.
CREATE FUNCTION personal.forget_idempotency_keys() RETURNS integer LANGUAGE sql SECURITY DEFINER
SET search_path = pg_catalog AS $$
    WITH gone AS (DELETE FROM personal.idempotency_keys WHERE recorded_at < now() - interval '24 hours' RETURNING 1)
    SELECT count(*)::integer FROM gone
$$;
REVOKE ALL ON FUNCTION personal.forget_idempotency_keys() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.forget_idempotency_keys() TO "${applicationRole}";

-- A revision ends when the next one begins, by the clock that the record itself carries: that of the server.
CREATE OR REPLACE FUNCTION keep_revision() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    before jsonb := to_jsonb(OLD);
    after jsonb := to_jsonb(NEW);
    replaced timestamptz := now();
BEGIN
    IF after ->> 'id' IS DISTINCT FROM before ->> 'id'
            OR after ->> 'recorded_at' IS DISTINCT FROM before ->> 'recorded_at'
            OR after ->> 'recorded_by' IS DISTINCT FROM before ->> 'recorded_by' THEN
        RAISE EXCEPTION 'when and by whom a row of % was recorded is never changed', TG_TABLE_NAME
            USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    IF after ->> 'revised_at' IS NOT NULL AND after ->> 'revised_at' IS DISTINCT FROM before ->> 'revised_at' THEN
        replaced := (after ->> 'revised_at')::timestamptz;
    END IF;
    IF TG_TABLE_SCHEMA = 'personal' THEN
        INSERT INTO personal.revisions (table_name, row_id, row_version, row_before, replaced_at)
        VALUES (TG_TABLE_NAME, OLD.id, OLD.version, before, replaced);
    ELSE
        INSERT INTO public.revisions (table_name, row_id, row_version, row_before, replaced_at)
        VALUES (TG_TABLE_NAME, OLD.id, OLD.version, before, replaced);
    END IF;
    RETURN NEW;
END $$;
