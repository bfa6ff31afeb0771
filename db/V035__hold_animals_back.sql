-- Stops on letting an animal go, for the health of people or animals. Nothing overrides one; it ends when it is cleared. Whom it
-- concerns is kept nowhere here: that is health data of people.
CREATE TABLE holds (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    kind              text        NOT NULL CHECK (kind IN ('exposure', 'notifiableDisease', 'asked')),
    -- the authority or practice that asked for it; empty while none has been reached
    asked_by          text,
    reference         text,
    cleared_at        timestamptz,
    cleared_by        text CHECK (cleared_by IN ('authority', 'licensedVet')),
    cleared_by_name   text,
    cleared_reference text,
    -- since when
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_hold_is_cleared_after_it_began CHECK (cleared_at > happened_at),
    CONSTRAINT clearing_a_hold_has_time_name_and_reference
        CHECK (num_nonnulls(cleared_at, cleared_by, cleared_by_name, cleared_reference) IN (0, 4)),
    CONSTRAINT who_asked_for_a_hold_is_named CHECK (kind <> 'asked' OR asked_by IS NOT NULL),
    CONSTRAINT an_authority_clears_its_holds CHECK (kind = 'asked' OR cleared_by = 'authority')
);
CREATE INDEX holds_by_case ON holds (case_id);

SELECT keep_revisions('holds');
CREATE TRIGGER a_hold_is_cleared_once BEFORE UPDATE ON holds FOR EACH ROW WHEN (OLD.cleared_at IS NOT NULL)
    EXECUTE FUNCTION refuse_change();

CREATE VIEW hold_holders AS
SELECT t.id, h.organisation_id FROM holds t JOIN case_holders h ON h.id = t.case_id;

DO $$
BEGIN
    EXECUTE 'CREATE OR REPLACE VIEW record_holders AS ' || rtrim(pg_get_viewdef('record_holders'::regclass), ';')
        || ' UNION ALL SELECT id, organisation_id FROM hold_holders';
END $$;

-- As before, with what came since.
CREATE OR REPLACE FUNCTION never_changes(of_table text) RETURNS text[] LANGUAGE sql IMMUTABLE AS $$
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
        WHEN 'holds' THEN ARRAY['case_id']
        WHEN 'fitness_checks' THEN ARRAY['case_id']
        WHEN 'release_approvals' THEN ARRAY['site_id', 'case_id']
        ELSE ARRAY[]::text[] END
$$;
