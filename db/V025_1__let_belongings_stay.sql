-- What a row belongs to never changes: it is found by that in the past as it is now, through the same index.
CREATE FUNCTION never_changes(of_table text) RETURNS text[] LANGUAGE sql IMMUTABLE AS $$
    SELECT ARRAY['id', 'recorded_at', 'recorded_by', 'import_id'] || CASE of_table
        WHEN 'calls' THEN ARRAY['incident_id']
        WHEN 'reported_animals' THEN ARRAY['call_id']
        WHEN 'incident_joins' THEN ARRAY['kept_incident_id', 'joined_incident_id']
        WHEN 'gate_results' THEN ARRAY['incident_id']
        WHEN 'attendances' THEN ARRAY['incident_id', 'gate_result_id']
        WHEN 'attendance_people' THEN ARRAY['attendance_id', 'member_id']
        WHEN 'closings' THEN ARRAY['incident_id']
        WHEN 'cases' THEN ARRAY['animal_id', 'incident_id']
        WHEN 'custody_links' THEN ARRAY['case_id']
        WHEN 'hand_overs' THEN ARRAY['case_id']
        WHEN 'whereabouts' THEN ARRAY['case_id']
        WHEN 'fates' THEN ARRAY['case_id']
        WHEN 'bodies' THEN ARRAY['case_id']
        WHEN 'visits' THEN ARRAY['case_id']
        WHEN 'findings' THEN ARRAY['visit_id']
        WHEN 'film_readings' THEN ARRAY['visit_id']
        WHEN 'procedures' THEN ARRAY['visit_id']
        WHEN 'discharges' THEN ARRAY['visit_id']
        WHEN 'placements' THEN ARRAY['case_id', 'hand_over_id']
        WHEN 'clutches' THEN ARRAY['mother_case_id']
        WHEN 'egg_recoveries' THEN ARRAY['clutch_id']
        WHEN 'clutch_custody_links' THEN ARRAY['clutch_id']
        WHEN 'hatchings' THEN ARRAY['clutch_id']
        WHEN 'unsuitabilities' THEN ARRAY['case_id', 'place_id']
        WHEN 'assessments' THEN ARRAY['case_id']
        WHEN 'released_animals' THEN ARRAY['release_id', 'case_id', 'assessment_id']
        WHEN 'liftings' THEN ARRAY['release_id']
        ELSE ARRAY[]::text[] END
$$;

CREATE INDEX custody_links_by_case ON custody_links (case_id);

CREATE OR REPLACE FUNCTION keep_revision() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER
SET search_path = pg_catalog, public AS $$
DECLARE
    before jsonb := to_jsonb(OLD);
    after jsonb := to_jsonb(NEW);
    replaced timestamptz := now();
    kept text;
BEGIN
    FOREACH kept IN ARRAY never_changes(TG_TABLE_NAME) LOOP
        IF after -> kept IS DISTINCT FROM before -> kept THEN
            RAISE EXCEPTION '% of a row of % is never changed', kept, TG_TABLE_NAME
                USING ERRCODE = 'integrity_constraint_violation';
        END IF;
    END LOOP;
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
