-- Limits of time as data: what starts them and what ends them, what moves them, and who was told.

-- Whose law holds where the network works: a country's limits hold in each of its parts, those of a part only there.
ALTER TABLE regions
    ADD COLUMN jurisdiction text CHECK (jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    ADD CONSTRAINT a_region_lies_in_its_country CHECK (split_part(jurisdiction, '-', 1) = country_code);

-- When the vet had it stable; some limits run from then.
ALTER TABLE visits
    ADD COLUMN stabilised_at timestamptz,
    ADD CONSTRAINT a_patient_is_stable_after_it_came CHECK (stabilised_at >= happened_at);

-- How the law of a jurisdiction lists a taxon, in that law's own words. A taxon without a row is not known to be listed and
-- not known not to be; that somebody looked and found it under nothing is the row notListed.
CREATE TABLE species_listings (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    jurisdiction    text        NOT NULL CHECK (jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    -- the taxon, its lower ranks included
    scientific_name text        NOT NULL,
    listed_as       text        NOT NULL CHECK (listed_as ~ '^[a-z][A-Za-z0-9]*$'),
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
    CONSTRAINT a_listing_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_listing_is_read_again_later CHECK (review_by > read_on)
);

CREATE TABLE time_limits (
    id                      uuid PRIMARY KEY,
    version                 integer     NOT NULL DEFAULT 0,
    jurisdiction            text        NOT NULL CHECK (jurisdiction ~ '^([A-Z]{2}(-[A-Z0-9]{1,3})?|network)$'),
    -- statute: a law, or what is laid down under one such as a licence's condition
    kind                    text        NOT NULL CHECK (kind IN ('statute', 'policy', 'advice')),
    taxon_group_id          uuid REFERENCES taxon_groups,
    scientific_name         text,
    except_scientific_names jsonb       NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(except_scientific_names) = 'array'),
    -- words of species_listings: it is about taxa that are listed as one of these; empty: about all
    listed_as               jsonb       NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(listed_as) = 'array'),
    binds                   text        NOT NULL CHECK (binds IN ('anyone', 'unauthorisedHolder', 'unauthorisedClinic',
                                                                  'clinic', 'authorisedHolder')),
    starts                  text        NOT NULL CHECK (starts IN ('found', 'received', 'takenIntoThisCustody',
                                                                   'stabilised', 'deathInCare')),
    -- whichever comes first
    ends                    jsonb       NOT NULL CHECK (jsonb_typeof(ends) = 'array' AND ends <> '[]'
        AND ends - ARRAY['handedToAuthorisedHolder', 'handedToClinic', 'custodyEnded', 'caseEnded', 'toldAuthority'] = '[]'),
    length                  integer     NOT NULL CHECK (length BETWEEN 1 AND 10000),
    length_unit             text        NOT NULL CHECK (length_unit IN ('hours', 'days', 'weeks', 'months', 'years')),
    warn_before_hours       integer     NOT NULL CHECK (warn_before_hours BETWEEN 0 AND 10000),
    -- on which it may be extended; empty: only by an order
    extension_grounds       jsonb       NOT NULL DEFAULT '[]' CHECK (jsonb_typeof(extension_grounds) = 'array'),
    words                   text        NOT NULL,
    source                  text        NOT NULL,
    read_on                 date        NOT NULL,
    review_by               date        NOT NULL,
    valid_from              date        NOT NULL,
    valid_to                date,
    happened_at             timestamptz,
    recorded_at             timestamptz NOT NULL,
    recorded_by             uuid        NOT NULL REFERENCES accounts,
    revised_at              timestamptz,
    revised_by              uuid REFERENCES accounts,
    revision_reason         text,
    import_id               uuid REFERENCES imports,
    CONSTRAINT a_networks_limit_is_policy CHECK ((kind = 'policy') = (jurisdiction = 'network')),
    CONSTRAINT a_limit_is_about_a_group_or_a_name CHECK (num_nonnulls(taxon_group_id, scientific_name) <= 1),
    CONSTRAINT after_a_death_only_telling_is_left CHECK (starts <> 'deathInCare' OR ends = '["toldAuthority"]'),
    CONSTRAINT a_limit_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_limit_is_read_again_later CHECK (review_by > read_on)
);

-- Moves the end of one limit for one case, on a ground that the limit names or by an order of an authority.
CREATE TABLE clock_extensions (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    limit_id          uuid        NOT NULL REFERENCES time_limits,
    until_at          timestamptz NOT NULL,
    ground            text,
    order_authority   text,
    order_number      text,
    order_date        date,
    order_words       text,
    -- the office that granted it, no person
    granted_by        text        NOT NULL,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was granted
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT an_extension_has_a_ground_or_an_order CHECK (num_nonnulls(ground, order_number) = 1),
    CONSTRAINT an_order_is_told_whole
        CHECK (num_nonnulls(order_authority, order_number, order_date, order_words) IN (0, 4)),
    CONSTRAINT an_extension_ends_after_it_begins CHECK (until_at > happened_at),
    CONSTRAINT withdrawing_an_extension_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX clock_extensions_by_case ON clock_extensions (case_id);

-- Somebody told an authority what a limit asks to be told.
CREATE TABLE clock_notices (
    id                uuid PRIMARY KEY,
    version           integer     NOT NULL DEFAULT 0,
    case_id           uuid        NOT NULL REFERENCES cases,
    limit_id          uuid        NOT NULL REFERENCES time_limits,
    -- the office that was told, no person
    told              text        NOT NULL,
    how               text        NOT NULL CHECK (how IN ('phone', 'email', 'letter', 'form', 'inPerson')),
    reference         text,
    withdrawn_at      timestamptz,
    withdrawn_because text,
    -- when it was told
    happened_at       timestamptz NOT NULL,
    recorded_at       timestamptz NOT NULL,
    recorded_by       uuid        NOT NULL REFERENCES accounts,
    revised_at        timestamptz,
    revised_by        uuid REFERENCES accounts,
    revision_reason   text,
    import_id         uuid REFERENCES imports,
    CONSTRAINT withdrawing_a_notice_has_time_and_reason
        CHECK (num_nonnulls(withdrawn_at, withdrawn_because) IN (0, 2))
);
CREATE INDEX clock_notices_by_case ON clock_notices (case_id);

SELECT keep_revisions('species_listings'), keep_revisions('time_limits'), keep_revisions('clock_extensions'),
       keep_revisions('clock_notices');
CREATE VIEW clock_notice_holders AS
SELECT n.id, h.organisation_id FROM clock_notices n JOIN case_holders h ON h.id = n.case_id;
SELECT belongs_by('clock_extensions', 'case_id', 'limit_id'), belongs_by('clock_notices', 'case_id', 'limit_id'),
       held_by('clock_extensions', 'case_id', 'case_holders'), held_by('clock_notices', 'case_id', 'case_holders');

-- The shipped rows are those of limits that were read, and no others. What is said to be told was read; how long before its
-- end a limit warns is no figure of any source.
INSERT INTO time_limits (id, jurisdiction, kind, listed_as, binds, starts, ends, length, length_unit, warn_before_hours,
    extension_grounds, words, source, read_on, review_by, valid_from, recorded_at, recorded_by)
SELECT ('01920000-0000-7000-8000-000000055' || row.id)::uuid, row.jurisdiction, 'statute', row.listed_as::jsonb, row.binds,
    row.starts, row.ends::jsonb, row.length, row.length_unit, row.warn_before_hours, row.extension_grounds::jsonb, row.words,
    row.source || ' From when it holds the reading does not say: entered from the day on which it was read. How long before'
        || ' its end it warns is no figure of the source. Check your local code and your licensed vet.',
    '2026-11-25', '2027-11-25', '2026-11-25', now(), '01920000-0000-7000-8000-000000000000'
FROM (VALUES
    ('001', 'US-IN', '[]', 'unauthorisedHolder', 'takenIntoThisCustody', '["handedToAuthorisedHolder", "caseEnded"]',
     24, 'hours', 6, '[]',
     'Whoever has it without a permit, or with one of the wrong class, hands it to a holder of the right permit within 24 hours.',
     '312 Indiana Administrative Code 9-10-9.'),
    ('002', 'US-CO', '[]', 'unauthorisedClinic', 'takenIntoThisCustody',
     '["handedToAuthorisedHolder", "toldAuthority", "caseEnded"]', 24, 'hours', 6, '[]',
     'A vet who treats it without a permit hands it on, or tells the authority, within 24 hours.',
     '2 Code of Colorado Regulations 406-14, section 1405. That the 24 hours run from when the vet took it is derived.'),
    ('003', 'US-AR', '[]', 'unauthorisedClinic', 'stabilised', '["handedToAuthorisedHolder", "caseEnded"]',
     72, 'hours', 24, '[]',
     'A vet who treats it without a permit hands it on within 72 hours after it is stable.',
     'Arkansas Game and Fish Commission, Code of Regulations 09.12.'),
    ('004', 'GB-ENG', '["schedule4"]', 'authorisedHolder', 'takenIntoThisCustody',
     '["handedToClinic", "toldAuthority", "caseEnded"]', 15, 'days', 72, '[]',
     'An authorised keeper of a bird of Schedule 4 lets it go, passes it to a vet, or registers it, within 15 days. That it was registered is entered as a notice.',
     'General licence GL07, gov.uk 2024.'),
    ('005', 'GB-ENG', '["schedule4"]', 'clinic', 'takenIntoThisCustody', '["custodyEnded", "toldAuthority", "caseEnded"]',
     6, 'weeks', 168, '[]',
     'A vet keeps a bird of Schedule 4 for at most six weeks. That it was registered is entered as a notice.',
     'General licence GL08, gov.uk 2024. That registering it ends this limit too is derived.'),
    ('006', 'NZ', '[]', 'authorisedHolder', 'received', '["caseEnded"]', 3, 'months', 336, '[]',
     'A permit lets it be held for three months; the department''s local office may extend that, which is entered as its order.',
     'Holding wildlife for rehabilitation, Department of Conservation, doc.govt.nz.'),
    ('007', 'US-WA', '[]', 'anyone', 'received', '["caseEnded"]', 180, 'days', 720,
     '["over-wintering", "moulting", "placement"]',
     'Care ends within 180 days; over-wintering, moulting and placement are named grounds for an extension.',
     'Washington Administrative Code 220-450, Washington State.'),
    ('008', 'US-WI', '[]', 'anyone', 'received', '["caseEnded"]', 180, 'days', 720, '[]',
     'Care ends within 180 days.', 'Wisconsin Administrative Code NR 19.78.'),
    ('009', 'US-CO', '[]', 'anyone', 'received', '["caseEnded"]', 180, 'days', 720, '[]',
     'Care ends within 180 days.', '2 Code of Colorado Regulations 406-14, section 1405.'),
    ('010', 'CA-QC', '[]', 'anyone', 'received', '["caseEnded"]', 1, 'years', 1440, '[]',
     'Care ends within one year.', 'Quebec, C-61.1, r. 5, section 36.'),
    ('011', 'US-WA', '["threatened", "endangered"]', 'anyone', 'received', '["toldAuthority"]', 24, 'hours', 6, '[]',
     'The authority is told within 24 hours that a threatened or endangered animal was received. So it is of an oiled one, which is not told apart here: tell that yourself.',
     'Washington Administrative Code 220-450, Washington State.'),
    ('012', 'US-WA', '["sensitive"]', 'anyone', 'received', '["toldAuthority"]', 72, 'hours', 24, '[]',
     'The authority is told within 72 hours that an animal of a sensitive species was received.',
     'Washington Administrative Code 220-450, Washington State.'),
    ('013', 'US-WA', '["threatened", "endangered", "sensitive"]', 'anyone', 'deathInCare', '["toldAuthority"]', 24, 'hours', 6,
     '[]', 'The authority is told of a death in care within 24 hours, and approves before the body is disposed of.',
     'Washington Administrative Code 220-450, Washington State. Of which animals the reading does not say: entered for those that are listed.'),
    ('014', 'US-WI', '["threatened", "endangered"]', 'anyone', 'received', '["toldAuthority"]', 48, 'hours', 12, '[]',
     'The authority is told within 48 hours that a threatened or endangered animal was received.',
     'Wisconsin Administrative Code NR 19.78.')) AS row (id, jurisdiction, listed_as, binds, starts, ends, length, length_unit,
        warn_before_hours, extension_grounds, words, source);
