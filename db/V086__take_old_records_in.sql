-- Taking old records in: rows that tell of one animal, how such an incident ended, and what does not stir when the past comes in.

ALTER TABLE personal.record_trial_rows
    -- the first row of the file that tells of the same animal, or perhaps does
    ADD COLUMN one_with bigint,
    -- the row whose incident this one is a call of, where that was decided when it was taken
    ADD COLUMN incident_row bigint;
-- They are written by the job of the one trial that they all name: to look it up for each would take longer than to write it.
ALTER TABLE personal.record_trial_rows DROP CONSTRAINT record_trial_rows_trial_id_fkey;
CREATE INDEX record_trial_rows_of_one_incident ON personal.record_trial_rows (trial_id, incident_row)
    WHERE incident_row IS NOT NULL;

-- Words that no animal of the register is called by, how many rows have each finding, and what the whole file shows.
ALTER TABLE record_trial_progress ADD COLUMN summary jsonb;

-- Rows that perhaps tell of one animal become calls of one incident.
ALTER TABLE record_takings ADD COLUMN one_incident boolean NOT NULL DEFAULT false;
ALTER TABLE record_taking_progress
    ADD COLUMN import_id uuid REFERENCES imports,
    ADD COLUMN rows_entered bigint NOT NULL DEFAULT 0 CHECK (rows_entered >= 0);
CREATE INDEX record_taking_progress_by_import ON record_taking_progress (import_id);

-- What others kept does not tell how it ended for us.
ALTER TABLE closings DROP CONSTRAINT closings_outcome_check;
ALTER TABLE closings ADD CONSTRAINT closings_outcome_check
    CHECK (outcome IN ('leftWell', 'notAttendedUnsafe', 'notAttendedNobody', 'adviceOnly', 'passedOn')
        OR (outcome IN ('collected', 'deadChecked', 'notFound', 'notKnown') AND import_id IS NOT NULL));

-- Nobody is told as news of what is years old.
DROP TRIGGER tell_event ON incidents;
DROP TRIGGER tell_event ON closings;
CREATE TRIGGER tell_event AFTER INSERT ON incidents FOR EACH ROW WHEN (NEW.import_id IS NULL)
    EXECUTE FUNCTION tell_event('culvert.incident.logged', 'incidents', 'id');
CREATE TRIGGER tell_event AFTER INSERT ON closings FOR EACH ROW WHEN (NEW.import_id IS NULL)
    EXECUTE FUNCTION tell_event('culvert.incident.closed', 'incidents', 'incident_id');

-- Identifier of what is made of a row: a UUID of version 7 (RFC 9562) of when it was reported, so that lists that begin with the
-- newest do not begin with what is years old. Places, incidents, calls and the others of one row differ in their sort (0 to 4095),
-- takings in their mark.
CREATE FUNCTION taken_id(reported timestamptz, mark bigint, sort integer, row_number bigint) RETURNS uuid LANGUAGE sql
IMMUTABLE PARALLEL SAFE AS $$
    SELECT (lpad(to_hex(greatest(0, (extract(epoch FROM reported) * 1000)::bigint)), 12, '0') || '7'
            || lpad(to_hex(sort), 3, '0') || '8' || lpad(to_hex(mark & 134217727), 7, '0')
            || lpad(to_hex(row_number & 4294967295), 8, '0'))::uuid
$$;

-- A million rows more, and the planner would still think of the tables as they were.
CREATE FUNCTION look_at_records_anew() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public AS $$
BEGIN
    ANALYZE public.places;
    ANALYZE public.incidents;
    ANALYZE public.calls;
    ANALYZE public.reported_animals;
    ANALYZE public.closings;
    ANALYZE public.incident_origins;
    ANALYZE personal.words;
    ANALYZE personal.original_rows;
END $$;
REVOKE ALL ON FUNCTION look_at_records_anew() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION look_at_records_anew() TO "${applicationRole}";

-- Original rows, and remarks of theirs that nobody rang about, are erased when the longest duty to keep people has passed since
-- they were taken in. Where no rule says how long, they stay, as people do.
CREATE FUNCTION personal.erase_original_rows(at timestamptz) RETURNS bigint LANGUAGE plpgsql SECURITY DEFINER
SET search_path = pg_catalog, public AS $$
DECLARE
    kept_years integer;
    due timestamptz;
    gone bigint;
BEGIN
    IF at > now() + interval '1 day' THEN
        RAISE EXCEPTION 'rows are erased when they are due' USING ERRCODE = 'integrity_constraint_violation';
    END IF;
    SELECT max(years) INTO kept_years FROM retention_rules
    WHERE kind = 'people' AND valid_from <= at::date AND (valid_to IS NULL OR valid_to >= at::date);
    IF kept_years IS NULL THEN
        RETURN 0;
    END IF;
    due := at - make_interval(years => kept_years, days => 1);
    PERFORM set_config('culvert.erasing', 'on', true);
    UPDATE personal.words SET said = NULL, erased_at = at, version = version + 1, revised_at = at,
        revised_by = '01920000-0000-7000-8000-000000000000', revision_reason = 'personal data erased'
    WHERE erased_at IS NULL AND recorded_at < due
      AND import_id IN (SELECT DISTINCT import_id FROM personal.original_rows WHERE erased_at IS NULL AND recorded_at < due);
    DELETE FROM personal.revisions WHERE table_name = 'words'
        AND row_id IN (SELECT id FROM personal.words WHERE erased_at = at);
    UPDATE personal.original_rows SET text = NULL, erased_at = at, version = version + 1
    WHERE erased_at IS NULL AND recorded_at < due;
    GET DIAGNOSTICS gone = ROW_COUNT;
    RETURN gone;
END $$;
REVOKE ALL ON FUNCTION personal.erase_original_rows(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION personal.erase_original_rows(timestamptz) TO "${applicationRole}";
