-- What has been published of a taxon that bears on where and when it may go back: findings of studies with their spread,
-- and no law. A row past its review_by wants to be looked for again.
CREATE TABLE species_facts (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    kind            text        NOT NULL CHECK (kind IN ('movementRange', 'nestToWater', 'aquatic', 'activePeriod')),
    -- the taxon, its lower ranks included
    scientific_name text        NOT NULL,
    metres          double precision CHECK (metres > 0 AND metres <= 20100000),
    active_period   text CHECK (active_period IN ('day', 'night', 'twilight', 'anyTime')),
    words           text        NOT NULL,
    source          text        NOT NULL,
    read_on         date        NOT NULL,
    review_by       date        NOT NULL,
    valid_from      date        NOT NULL,
    valid_to        date,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT a_fact_of_distance_has_metres
        CHECK ((kind IN ('movementRange', 'nestToWater')) = (metres IS NOT NULL)),
    CONSTRAINT a_fact_of_activity_has_its_period CHECK ((kind = 'activePeriod') = (active_period IS NOT NULL)),
    CONSTRAINT a_fact_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_fact_is_looked_for_again_later CHECK (review_by > read_on)
);

SELECT keep_revisions('species_facts');

-- The shipped rows are those that were read in a source, and no others; what was concluded from it says "derived".
INSERT INTO species_facts (id, kind, scientific_name, metres, words, source, read_on, review_by, valid_from, recorded_at,
    recorded_by) VALUES
    ('01920000-0000-7000-8000-000000034001', 'movementRange', 'Chelodina longicollis', 757,
     'The places that one animal used lay 757 m apart (range length, give or take 76 m); its home range was 13.8 ha, give or take 2.8 ha, and it went 2,608 m in all, give or take 305 m. Between wetlands they go after rain; immature animals are most tied to it. This is a finding of one study of one population, not a rule and no limit. Check your local code and your licensed vet.',
     'Roe and Georges, Terrestrial activity, movements and spatial ecology of Chelodina longicollis; the abstract was read, not the study. Whether the spread is a standard error or a deviation was not noted.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000034002', 'nestToWater', 'Chelodina expansa', 300,
     'Nests lay 30 to 300 m from water, made by day, in rain or after it: a female with eggs may be struck 300 m from the water that she lives in. This is a finding of one study, not a rule and no limit. Check your local code and your licensed vet.',
     'Booth, natural history of nesting in two Australian freshwater turtles (2010). That a female may be struck that far away is derived.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000034003', 'nestToWater', 'Emydura signata', 10,
     'Nests lay 2 to 10 m from water, mostly made at night, in rain or after it. This is a finding of one study, not a rule and no limit. Check your local code and your licensed vet.',
     'Booth, natural history of nesting in two Australian freshwater turtles (2010). It was found of this species: whether others of the genus nest as near was not read.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000034004', 'aquatic', 'Chelodina longicollis', NULL,
     'It lives in wetlands and goes from one to another overland. This is a finding of a study, not a rule. Check your local code and your licensed vet.',
     'Derived: the study tells of moves between wetlands (Roe and Georges, Terrestrial activity, movements and spatial ecology of Chelodina longicollis; the abstract was read). No source that calls for the same water was read.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000034005', 'aquatic', 'Chelodina expansa', NULL,
     'It lives in water and leaves it to nest. This is a finding of a study, not a rule. Check your local code and your licensed vet.',
     'Derived: the study tells how far from water it nests (Booth, natural history of nesting in two Australian freshwater turtles, 2010). No source that calls for the same water was read.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000034006', 'aquatic', 'Emydura signata', NULL,
     'It lives in water and leaves it to nest. This is a finding of a study, not a rule. Check your local code and your licensed vet.',
     'Derived: the study tells how far from water it nests (Booth, natural history of nesting in two Australian freshwater turtles, 2010). No source that calls for the same water was read.',
     '2026-11-25', '2029-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000');
