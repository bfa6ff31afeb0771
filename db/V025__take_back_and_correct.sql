-- A case that was wrongly ended goes on: the end is taken back, and stays to be read.
ALTER TABLE fates
    ADD COLUMN withdrawn_at timestamptz,
    DROP CONSTRAINT a_case_ends_once,
    DROP CONSTRAINT fates_case_id_barbiturate_key;
CREATE UNIQUE INDEX a_case_ends_once ON fates (case_id) WHERE withdrawn_at IS NULL;
ALTER TABLE bodies
    ADD COLUMN withdrawn_at timestamptz,
    DROP CONSTRAINT a_case_leaves_one_body;
CREATE UNIQUE INDEX a_case_leaves_one_body ON bodies (case_id) WHERE withdrawn_at IS NULL;

-- A correction may not leave an attendance, a visit or an incident running backwards.
ALTER TABLE incidents ADD CONSTRAINT an_incident_happened_within_its_interval
    CHECK (happened_at IS NULL OR happened_not_before IS NULL OR happened_at >= happened_not_before);

-- Revisions of one record, whatever table it is in.
CREATE INDEX revisions_by_row ON revisions (row_id);

-- The history is written by its trigger and by nobody else: not added to by hand, nor changed.
REVOKE INSERT, UPDATE ON public.revisions, personal.revisions FROM "${applicationRole}";
ALTER FUNCTION keep_revision() SECURITY DEFINER SET search_path = pg_catalog, public;

-- What never changes after it was entered.
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON imports FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON road_links FOR EACH ROW EXECUTE FUNCTION refuse_change();
