-- What a placement passed over stands in its tests: no figure beside them is needed.
ALTER TABLE placements
    DROP CONSTRAINT passing_over_a_rule_has_a_reason,
    DROP COLUMN passed_over,
    ADD CONSTRAINT passing_over_a_rule_has_a_reason CHECK (despite IS NOT NULL
        OR NOT jsonb_path_exists(tests, '$[*] ? (@.strength == "policy" && @.verdict == "fail")'));

-- A reason for something else, such as an absence, fills no full house: only one that was tested and passed over does.
CREATE OR REPLACE FUNCTION count_places() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    limits carer_profiles;
    of_group text;
    there integer;
    of_group_there integer;
BEGIN
    SELECT * INTO limits FROM carer_profiles WHERE member_id = NEW.carer_id FOR UPDATE;
    IF NOT FOUND OR jsonb_path_exists(NEW.tests, '$[*] ? (@.test starts with "places" && @.verdict == "fail")') THEN
        RETURN NEW;
    END IF;
    SELECT g.key INTO of_group
    FROM cases c JOIN animals a ON a.id = c.animal_id JOIN taxa t ON t.id = a.taxon_id
    JOIN taxon_groups g ON g.id = t.taxon_group_id WHERE c.id = NEW.case_id;
    SELECT count(*), count(*) FILTER (WHERE g.key = of_group) INTO there, of_group_there
    FROM animals_with_carers w JOIN cases c ON c.id = w.case_id JOIN animals a ON a.id = c.animal_id
    JOIN taxa t ON t.id = a.taxon_id JOIN taxon_groups g ON g.id = t.taxon_group_id
    WHERE w.member_id = NEW.carer_id;
    IF there > limits.places OR of_group_there > (limits.places_by_group ->> of_group)::integer THEN
        RAISE EXCEPTION 'no place is free' USING ERRCODE = 'check_violation', CONSTRAINT = 'a_place_is_filled_once';
    END IF;
    RETURN NEW;
END $$;
