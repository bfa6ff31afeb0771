-- A rule of the network's own may ask that a second person agrees before it is set aside, and whoever lets an animal go beside
-- a known hotspot says that the warning was read.
ALTER TABLE release_rules
    ADD COLUMN asks_second_person boolean NOT NULL DEFAULT false,
    ADD CONSTRAINT only_policy_asks_a_second_person CHECK (NOT asks_second_person OR kind = 'policy');

ALTER TABLE liftings
    ADD COLUMN agreed_by_member_id uuid REFERENCES members,
    ADD CONSTRAINT only_an_override_is_agreed_to CHECK (agreed_by_member_id IS NULL OR kind = 'override');

CREATE FUNCTION second_person_is_another() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM accounts WHERE id = NEW.recorded_by AND member_id = NEW.agreed_by_member_id) THEN
        RAISE EXCEPTION 'one person agrees with herself' USING ERRCODE = 'check_violation',
            CONSTRAINT = 'the_second_person_is_another';
    END IF;
    RETURN NEW;
END $$;
CREATE TRIGGER second_person_is_another BEFORE INSERT ON liftings
    FOR EACH ROW EXECUTE FUNCTION second_person_is_another();

-- Keys of the warnings that were read before it.
ALTER TABLE releases ADD COLUMN warnings_read jsonb NOT NULL DEFAULT '[]';
