-- What has been published of how long eggs take, of how fast they develop, and of whether temperature makes their sex. Findings
-- with their spread, and no law.
CREATE TABLE incubation_facts (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    kind              text        NOT NULL CHECK (kind IN ('period', 'rateModel', 'sex')),
    -- the taxon, its lower ranks included
    scientific_name   text        NOT NULL,
    basis             text        NOT NULL CHECK (basis IN ('published', 'secondaryPage', 'commonPractice', 'fromMemory', 'derived')),
    setting           text CHECK (setting IN ('incubator', 'nest')),
    celsius_low       double precision CHECK (celsius_low BETWEEN 0 AND 50),
    celsius_high      double precision CHECK (celsius_high BETWEEN 0 AND 50),
    days_low          double precision CHECK (days_low > 0 AND days_low <= 1000),
    days_high         double precision CHECK (days_high > 0 AND days_high <= 1000),
    -- of a rate model: development stands still here; so many degree days above it; and the largest share by which it missed
    threshold_celsius double precision CHECK (threshold_celsius BETWEEN 0 AND 50),
    degree_days       double precision CHECK (degree_days > 0 AND degree_days <= 10000),
    stated_error      double precision CHECK (stated_error > 0 AND stated_error <= 0.5),
    waits_afterwards  boolean,
    sex_by            text CHECK (sex_by IN ('genes', 'temperature')),
    words             text        NOT NULL,
    source            text        NOT NULL,
    read_on           date        NOT NULL,
    review_by         date        NOT NULL,
    valid_from        date        NOT NULL,
    valid_to          date,
    happened_at       timestamptz,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT a_period_has_its_days
        CHECK (num_nonnulls(days_low, days_high, setting) = CASE kind WHEN 'period' THEN 3 ELSE 0 END),
    CONSTRAINT days_go_from_few_to_many CHECK (days_low <= days_high),
    CONSTRAINT temperatures_go_from_low_to_high
        CHECK (num_nonnulls(celsius_low, celsius_high) IN (0, 2) AND celsius_low <= celsius_high),
    CONSTRAINT a_rate_model_has_its_figures CHECK (
        num_nonnulls(threshold_celsius, degree_days, stated_error, waits_afterwards)
            = CASE kind WHEN 'rateModel' THEN 4 ELSE 0 END),
    CONSTRAINT a_rate_model_says_where_it_holds
        CHECK (kind <> 'rateModel' OR celsius_low IS NOT NULL AND celsius_low - 0.5 > threshold_celsius),
    CONSTRAINT what_makes_the_sex_is_told CHECK ((kind = 'sex') = (sex_by IS NOT NULL)),
    CONSTRAINT a_fact_of_incubation_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_fact_of_incubation_is_looked_for_again_later CHECK (review_by > read_on)
);
SELECT keep_revisions('incubation_facts');

-- The shipped rows are those that were read in a source or are said to be remembered, and no others.
INSERT INTO incubation_facts (id, kind, scientific_name, basis, setting, celsius_low, celsius_high, days_low, days_high,
    threshold_celsius, degree_days, stated_error, waits_afterwards, sex_by, words, source,
    read_on, review_by, valid_from, recorded_at, recorded_by)
SELECT ('01920000-0000-7000-8000-0000000480' || lpad(row_number() OVER ()::text, 2, '0'))::uuid, v.*,
    date '2026-11-25', date '2029-11-25', date '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'::uuid
FROM (VALUES
    ('period', 'Chelodina longicollis', 'secondaryPage', 'incubator', 30::float8, 30::float8, 60::float8, 80::float8,
     NULL::float8, NULL::float8, NULL::float8, NULL::boolean, NULL::text,
     'In an incubator 60 to 80 days, from clutches of 4 to 22 eggs; another page says about 65 days at 30 °C.',
     'Pages of two turtle hospitals, in Sydney and in Queensland; of low weight. No study was read.'),
    ('period', 'Chelodina longicollis', 'commonPractice', 'incubator', 30, 30, 65, 70, NULL, NULL, NULL, NULL, NULL,
     'Eggs from struck females, in vermiculite mixed 1:1 with water by weight, near 30 °C, hatch after about 65 to 70 days.',
     'Common practice, no source.'),
    ('period', 'Chelodina longicollis', 'secondaryPage', 'nest', NULL, NULL, 120, 120, NULL, NULL, NULL, NULL, NULL,
     'In the ground about 120 days.',
     'The page of a turtle hospital in Sydney; of low weight.'),
    ('period', 'Chelodina expansa', 'secondaryPage', 'nest', NULL, NULL, 324, 360, NULL, NULL, NULL, NULL, NULL,
     'In natural nests 324 to 360 days on average; development pauses, and hatchlings wait for rain.',
     'One secondary page; of low weight.'),
    ('period', 'Emydura macquarii', 'fromMemory', 'nest', NULL, NULL, 66, 85, NULL, NULL, NULL, NULL, NULL,
     'In natural nests roughly 66 to 85 days.',
     'From memory: no source was read.'),
    ('period', 'Chelydra serpentina', 'published', 'incubator', 23, 27, 66.3, 78.1, NULL, NULL, NULL, NULL, NULL,
     'At 25 °C 74.3 days; with the first 21 days at 23 °C 78.1 days, with the first 21 days at 27 °C 66.3 days.',
     'Finkler 2017, abstract of the Society for Integrative and Comparative Biology; the abstract was read.'),
    ('period', 'Chrysemys picta', 'secondaryPage', 'nest', NULL, NULL, 50, 90, NULL, NULL, NULL, NULL, NULL,
     'In the field 65 to 90 days; other pages say 50 to 80 days.',
     'Secondary pages; of low weight.'),
    ('period', 'Carettochelys insculpta', 'published', 'incubator', 28, 32, 53, 101, NULL, NULL, NULL, NULL, NULL,
     'Development was complete after 53 days at 32 °C, 69 days at 30 °C and 101 days at 28 °C. The young then wait in the egg for water.',
     'Studies of Carettochelys; the abstracts were read.'),
    ('rateModel', 'Carettochelys insculpta', 'derived', NULL, 28, 32, NULL, NULL, 23.5, 446, 0.02, true, NULL,
     '446 degree days above 23.5 °C, a straight line through the three published times: it gives 52.5, 68.6 and 99.1 days at 32, 30 and 28 °C, where 53, 69 and 101 were found; the largest miss is 1.9 per cent. It says when development is complete; the young then wait in the egg for water.',
     'Derived from the published times at 28, 30 and 32 °C (studies of Carettochelys; the abstracts were read). The model itself is in no publication that was read, and holds between those temperatures.'),
    ('sex', 'Chelodina', 'published', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'genes',
     'Sex chromosomes (XX and XY) were found: the temperature of the incubator does not set the sex.',
     'Scientific Reports 2020 on sex chromosomes of chelid turtles, seven species tested; Ezaz and others, Chromosome Research 14:139, 2006. The abstracts were read.'),
    ('sex', 'Emydura', 'published', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'genes',
     'Sex chromosomes (XX and XY) were found: the temperature of the incubator does not set the sex.',
     'Scientific Reports 2020 on sex chromosomes of chelid turtles, seven species tested; Ezaz and others, Chromosome Research 14:139, 2006. The abstracts were read.'),
    ('sex', 'Elseya', 'published', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'genes',
     'Sex chromosomes (XX and XY) were found: the temperature of the incubator does not set the sex.',
     'Scientific Reports 2020 on sex chromosomes of chelid turtles, seven species tested; Ezaz and others, Chromosome Research 14:139, 2006. The abstracts were read.'),
    ('sex', 'Chelydra serpentina', 'published', NULL, 21.5, 30.5, NULL, NULL, NULL, NULL, NULL, NULL, 'temperature',
     'Males at 23 to 27 °C, both at 21.5 and at 27.5 °C, females alone at 30.5 °C; in another study 92 per cent males at 26 °C and females alone at 30 °C. It is set in roughly the middle third of incubation.',
     'Journal of Experimental Biology 201:439, 1998; a thesis (OSTI 10154684); J Exp Biol 221, jeb188698, 2018. The abstracts were read; the middle third is from memory.'),
    ('sex', 'Chrysemys picta', 'published', NULL, 21.5, 30, NULL, NULL, NULL, NULL, NULL, NULL, 'temperature',
     'Females alone above 30 °C, mostly or all males through 24 to 27 °C, and no females found at 21.5 and 22.5 °C. It is set in roughly the middle third of incubation.',
     'Canadian Journal of Zoology 70:391-394, 1992. The abstract was read; the middle third is from memory.'),
    ('sex', 'Trachemys', 'published', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'temperature',
     'Sex is set by temperature, in roughly the middle third of incubation, within a window of about 4 °C; at which temperatures was not read.',
     'Journal of Experimental Biology 221, jeb188698, 2018. The abstract was read; the middle third is from memory.')
) v;
