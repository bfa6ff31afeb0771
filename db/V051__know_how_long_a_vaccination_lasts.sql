-- How long a vaccination counts, as it is published; and what was done: a course, a booster, or a test for antibodies.
CREATE TABLE vaccination_rules (
    id                    uuid PRIMARY KEY,
    version               integer     NOT NULL DEFAULT 0,
    against               text        NOT NULL,
    first_booster_months  integer     NOT NULL CHECK (first_booster_months > 0),
    interval_months       integer     NOT NULL CHECK (interval_months > 0),
    -- below which a booster is wanted
    least_iu_per_ml       double precision NOT NULL CHECK (least_iu_per_ml > 0),
    words                 text        NOT NULL,
    source                text        NOT NULL,
    read_on               date        NOT NULL,
    review_by             date        NOT NULL,
    valid_from            date        NOT NULL,
    happened_at           timestamptz,
    recorded_at           timestamptz NOT NULL,
    recorded_by           uuid        NOT NULL REFERENCES accounts,
    revised_at            timestamptz,
    revised_by            uuid REFERENCES accounts,
    revision_reason       text,
    import_id             uuid REFERENCES imports,
    CONSTRAINT one_vaccination_rule_begins_on_a_day UNIQUE (against, valid_from),
    CONSTRAINT a_vaccination_rule_is_reviewed_after_it_was_read CHECK (review_by > read_on)
);
SELECT keep_revisions('vaccination_rules');

ALTER TABLE personal.vaccinations
    ADD COLUMN event text CHECK (event IN ('course', 'booster', 'antibodyTest')),
    ADD COLUMN antibody_iu_per_ml double precision
        CONSTRAINT antibodies_are_none_or_more CHECK (antibody_iu_per_ml >= 0),
    ADD CONSTRAINT an_antibody_test_has_a_figure
        CHECK ((event IS NOT DISTINCT FROM 'antibodyTest') = (antibody_iu_per_ml IS NOT NULL));
INSERT INTO vaccination_rules (id, against, first_booster_months, interval_months, least_iu_per_ml, words, source, read_on,
                               review_by, valid_from, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000000510', 'lyssavirus', 12, 36, 0.5,
     'A booster one year after the first dose; then a test for antibodies every three years and a booster where it finds less than 0.5 IU/mL, or a booster every three years without a test. Ask a doctor.',
     'Australian Immunisation Handbook, rabies and other lyssaviruses, as of October 2024', '2026-11-01', '2027-11-01',
     '2020-01-01', now(), '01920000-0000-7000-8000-000000000000');

-- The day told here is null where an event shows no protection.
ALTER TABLE personal.vaccinations
    DROP CONSTRAINT a_vaccination_is_whole_or_erased,
    ADD CONSTRAINT a_vaccination_is_whole_or_erased
        CHECK (num_nonnulls(against, given_on, basis) = CASE WHEN erased_at IS NULL THEN 3 ELSE 0 END
               AND (erased_at IS NULL OR num_nonnulls(current_until, event, antibody_iu_per_ml) = 0)),
    ADD CONSTRAINT what_covers_no_day_is_a_test CHECK (erased_at IS NOT NULL OR current_until IS NOT NULL OR event = 'antibodyTest');

-- With the rest of an erased vaccination goes what was done.
CREATE FUNCTION personal.forget_what_was_done() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    NEW.event := NULL;
    NEW.antibody_iu_per_ml := NULL;
    RETURN NEW;
END $$;
CREATE TRIGGER forget_what_was_done BEFORE UPDATE ON personal.vaccinations FOR EACH ROW
    WHEN (NEW.erased_at IS NOT NULL) EXECUTE FUNCTION personal.forget_what_was_done();
