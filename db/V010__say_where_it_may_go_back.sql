-- Where an animal may go back: rules as data, sites, assessments kept for ever, releases.

-- One rule. Its kind says what lifts it where it is not met: of statute and code only a permit with number and document,
-- of the network's own policy a named person with a reason; guidance is shown. A row past its review_by asks before it
-- passes. The network's own rows have the jurisdiction `network`; the others an ISO 3166 code.
CREATE TABLE release_rules (
    id                        uuid PRIMARY KEY,
    version                   integer     NOT NULL DEFAULT 0,
    jurisdiction              text        NOT NULL CHECK (jurisdiction ~ '^([A-Z]{2}(-[A-Z0-9]{1,3})?|network)$'),
    kind                      text        NOT NULL CHECK (kind IN ('statute', 'code', 'guidance', 'policy')),
    taxon_group_id            uuid REFERENCES taxon_groups,
    scientific_name           text,
    except_scientific_names   jsonb       NOT NULL DEFAULT '[]',
    applies_to                text        NOT NULL CHECK (applies_to IN ('adult', 'orphan', 'any')),
    -- what this rule calls an adult or an orphan
    applies_definition        text,
    test                      text        NOT NULL CHECK (test IN ('foundPlaceFirst', 'greatestDistance',
                                                                   'landownerConsent')),
    greatest_distance_metres  double precision CHECK (greatest_distance_metres > 0),
    -- a found place that is known less well than this does not count as known; empty: however well it is known
    origin_known_within_metres double precision CHECK (origin_known_within_metres > 0),
    -- the grounds on which this rule lets the found place be left: [{"key", "words"}]
    allowed_grounds           jsonb       NOT NULL DEFAULT '[]',
    -- what this rule says of an animal whose origin nobody knows; empty where it says nothing
    unknown_origin_outcome    text CHECK (unknown_origin_outcome IN ('notReleasable', 'withinRangeWithApproval')),
    consents                  text,
    words                     text        NOT NULL,
    source                    text        NOT NULL,
    read_on                   date        NOT NULL,
    review_by                 date        NOT NULL,
    valid_from                date        NOT NULL,
    valid_to                  date,
    happened_at               timestamptz,
    recorded_at               timestamptz NOT NULL,
    recorded_by               uuid        NOT NULL REFERENCES accounts,
    revised_at                timestamptz,
    revised_by                uuid REFERENCES accounts,
    revision_reason           text,
    import_id                 uuid REFERENCES imports,
    CONSTRAINT policy_is_the_networks_own CHECK ((kind = 'policy') = (jurisdiction = 'network')),
    CONSTRAINT a_rule_is_about_a_group_or_a_name CHECK (num_nonnulls(taxon_group_id, scientific_name) <= 1),
    CONSTRAINT a_rule_says_whom_it_means CHECK (applies_to = 'any' OR applies_definition IS NOT NULL),
    CONSTRAINT a_distance_rule_has_its_distance
        CHECK ((test = 'greatestDistance') = (greatest_distance_metres IS NOT NULL)),
    CONSTRAINT a_rule_ends_after_it_begins CHECK (valid_to > valid_from)
);

-- The shipped rows are those of Queensland that were read, and no others. Each says what was read and what was not.
INSERT INTO release_rules (id, jurisdiction, kind, scientific_name, except_scientific_names, applies_to,
    applies_definition, test, greatest_distance_metres, origin_known_within_metres, allowed_grounds, consents, words,
    source, read_on, review_by, valid_from, recorded_at, recorded_by) VALUES
    ('01920000-0000-7000-8000-000000001001', 'AU-QLD', 'code', 'Phascolarctos cinereus', '[]', 'any', NULL,
     'foundPlaceFirst', NULL, 1000,
     '[{"key": "notSuitable", "words": "the rescue site was assessed first, and is not suitable"}]',
     'Approval for the release at the site. South East Queensland has a further guideline on release sites.',
     'The rescue site is always the first site assessed; only where it is not suitable may another be considered.',
     'Release site assessment, Koala Rehabilitators Hub, Queensland environment department (a stored copy of 2024-25), which reports the Code of Practice: Rehabilitation of sick, injured or orphaned koalas in Queensland. The code itself was not read, nor its list of what makes a site unsuitable: its assessment form decides that. That a place counts as known within 1 km is no figure of the source: set your own. Check your local code and your licensed vet.',
     '2026-11-25', '2027-09-01', '2024-01-01', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001002', 'AU-QLD', 'code', 'Phascolarctos cinereus', '[]', 'adult',
     'A koala that was not rescued as an orphan.',
     'greatestDistance', 10000, NULL, '[]',
     'Approval for the release at the site. South East Queensland has a further guideline on release sites.',
     'Another site is at most 10 km from the rescue site for a koala that was not an orphan.',
     'Release site assessment, Koala Rehabilitators Hub, Queensland environment department (a stored copy of 2024-25), which reports the Code of Practice: Rehabilitation of sick, injured or orphaned koalas in Queensland. The code itself was not read. Look again by the staged repeal of the koala plan of 2017 on 2027-09-01. Check your local code and your licensed vet.',
     '2026-11-25', '2027-09-01', '2024-01-01', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001003', 'AU-QLD', 'code', 'Phascolarctos cinereus', '[]', 'orphan',
     'A koala that was rescued as an orphan.',
     'greatestDistance', 20000, NULL, '[]',
     'Approval for the release at the site. South East Queensland has a further guideline on release sites.',
     'Another site is at most 20 km from the rescue site for a koala that was rescued as an orphan.',
     'Release site assessment, Koala Rehabilitators Hub, Queensland environment department (a stored copy of 2024-25), which reports the Code of Practice: Rehabilitation of sick, injured or orphaned koalas in Queensland. The code itself was not read. Look again by the staged repeal of the koala plan of 2017 on 2027-09-01. Check your local code and your licensed vet.',
     '2026-11-25', '2027-09-01', '2024-01-01', now(), '01920000-0000-7000-8000-000000000000'),
    ('01920000-0000-7000-8000-000000001004', 'AU-QLD', 'code', NULL, '["Phascolarctos cinereus"]', 'any', NULL,
     'foundPlaceFirst', NULL, 1000,
     '[{"key": "habitat", "words": "it is not the right habitat, with shelter, water and food"},
       {"key": "hazard", "words": "it is not free of immediate hazards, of which a roadside is the named example"},
       {"key": "clearing", "words": "it is known to face imminent clearing or development"}]',
     'Into a national park only an animal that came from it, with approval beforehand.',
     'Where the found location is known and suitable, the animal goes back there. Where it is not suitable, it goes as near to it as possible, to a place chosen by the home range of the species; the code gives no number for that.',
     'Code of Practice, Care of Sick, Injured or Orphaned Protected Animals in Queensland, section 15, edition of 2013. An edition of 2020 exists and was not read: the review has been due since then. That a place counts as known within 1 km is no figure of the code: set your own. Check your local code and your licensed vet.',
     '2026-11-25', '2020-12-31', '2013-01-01', now(), '01920000-0000-7000-8000-000000000000');

-- A place where animals may be let go, with what is known of it.
CREATE TABLE release_sites (
    id                               uuid PRIMARY KEY,
    version                          integer     NOT NULL DEFAULT 0,
    name                             text        NOT NULL,
    jurisdiction                     text        NOT NULL CHECK (jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    decimal_latitude                 double precision NOT NULL CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude                double precision NOT NULL CHECK (decimal_longitude BETWEEN -180 AND 180),
    coordinate_uncertainty_in_meters double precision NOT NULL CHECK (coordinate_uncertainty_in_meters > 0),
    habitat                          text        NOT NULL,
    taxon_groups                     jsonb       NOT NULL DEFAULT '[]',
    catchment                        text,
    protected_area                   text,
    landowner_consent                text        NOT NULL CHECK (landowner_consent IN ('yes', 'no', 'unknown')),
    landowner_consent_until          date,
    happened_at                      timestamptz,
    recorded_at                      timestamptz NOT NULL,
    recorded_by                      uuid        NOT NULL REFERENCES accounts,
    revised_at                       timestamptz,
    revised_by                       uuid REFERENCES accounts,
    revision_reason                  text,
    import_id                        uuid REFERENCES imports
);

-- Someone looked at the place where the animal was found and says on what ground it cannot go back there.
CREATE TABLE unsuitabilities (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    case_id         uuid        NOT NULL REFERENCES cases,
    place_id        uuid        NOT NULL REFERENCES places,
    taxon_id        uuid        NOT NULL REFERENCES taxa,
    ground          text        NOT NULL,
    words           text        NOT NULL,
    happened_at     timestamptz NOT NULL,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports
);
CREATE INDEX unsuitabilities_by_place ON unsuitabilities (place_id, taxon_id);

-- One run of the rules for one case and one site, with what it was run on: kept for ever, and never changed.
CREATE TABLE assessments (
    id                               uuid PRIMARY KEY,
    version                          integer     NOT NULL DEFAULT 0,
    case_id                          uuid        NOT NULL REFERENCES cases,
    site_id                          uuid REFERENCES release_sites,
    jurisdiction                     text        NOT NULL,
    decimal_latitude                 double precision NOT NULL,
    decimal_longitude                double precision NOT NULL,
    coordinate_uncertainty_in_meters double precision NOT NULL,
    assessed_on                      date        NOT NULL,
    subject                          jsonb       NOT NULL,
    findings                         jsonb       NOT NULL,
    overall                          text        NOT NULL CHECK (overall IN ('pass', 'fail', 'cantTell')),
    happened_at                      timestamptz NOT NULL,
    recorded_at                      timestamptz NOT NULL,
    recorded_by                      uuid        NOT NULL REFERENCES accounts,
    revised_at                       timestamptz,
    revised_by                       uuid REFERENCES accounts,
    revision_reason                  text,
    import_id                        uuid REFERENCES imports,
    UNIQUE (id, case_id)
);
CREATE INDEX assessments_by_case ON assessments (case_id);

-- One letting go, of one animal or of a batch, at one place and time.
CREATE TABLE releases (
    id                               uuid PRIMARY KEY,
    version                          integer     NOT NULL DEFAULT 0,
    site_id                          uuid REFERENCES release_sites,
    decimal_latitude                 double precision NOT NULL CHECK (decimal_latitude BETWEEN -90 AND 90),
    decimal_longitude                double precision NOT NULL CHECK (decimal_longitude BETWEEN -180 AND 180),
    coordinate_uncertainty_in_meters double precision NOT NULL CHECK (coordinate_uncertainty_in_meters > 0),
    approved_by                      text        NOT NULL,
    released_by_member_id            uuid REFERENCES members,
    happened_at                      timestamptz NOT NULL,
    recorded_at                      timestamptz NOT NULL,
    recorded_by                      uuid        NOT NULL REFERENCES accounts,
    revised_at                       timestamptz,
    revised_by                       uuid REFERENCES accounts,
    revision_reason                  text,
    import_id                        uuid REFERENCES imports
);

CREATE TABLE released_animals (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    release_id      uuid        NOT NULL REFERENCES releases,
    case_id         uuid        NOT NULL CONSTRAINT a_case_is_released_once UNIQUE,
    assessment_id   uuid        NOT NULL,
    happened_at     timestamptz,
    recorded_at     timestamptz NOT NULL,
    recorded_by     uuid        NOT NULL REFERENCES accounts,
    revised_at      timestamptz,
    revised_by      uuid REFERENCES accounts,
    revision_reason text,
    import_id       uuid REFERENCES imports,
    CONSTRAINT the_assessment_is_of_that_case FOREIGN KEY (assessment_id, case_id) REFERENCES assessments (id, case_id)
);
CREATE INDEX released_animals_by_release ON released_animals (release_id);

-- What lifted a test that was not passed: a permit with its number and document, or a person with a reason (the author).
CREATE TABLE liftings (
    id                  uuid PRIMARY KEY,
    version             integer     NOT NULL DEFAULT 0,
    release_id          uuid        NOT NULL REFERENCES releases,
    finding_key         text        NOT NULL,
    kind                text        NOT NULL CHECK (kind IN ('permit', 'override')),
    reason              text,
    permit_number       text,
    issued_by           text,
    document_name       text,
    document_media_type text,
    document            bytea,
    happened_at         timestamptz,
    recorded_at         timestamptz NOT NULL,
    recorded_by         uuid        NOT NULL REFERENCES accounts,
    revised_at          timestamptz,
    revised_by          uuid REFERENCES accounts,
    revision_reason     text,
    import_id           uuid REFERENCES imports,
    CONSTRAINT a_test_is_lifted_once UNIQUE (release_id, finding_key),
    CONSTRAINT an_override_has_a_reason CHECK ((kind = 'override') = (reason IS NOT NULL)),
    CONSTRAINT a_permit_has_number_and_document CHECK (
        num_nonnulls(permit_number, issued_by, document_name, document_media_type, document)
            = CASE kind WHEN 'permit' THEN 5 ELSE 0 END
        AND (document IS NULL OR octet_length(document) > 0))
);

ALTER TABLE fates ADD CONSTRAINT fates_release_is_recorded FOREIGN KEY (release_id) REFERENCES releases;

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'rows of % are kept as they are', TG_TABLE_NAME USING ERRCODE = 'integrity_constraint_violation';
END $$;
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON assessments FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER kept_for_ever BEFORE UPDATE OR DELETE ON liftings FOR EACH ROW EXECUTE FUNCTION refuse_change();

SELECT keep_revisions('release_rules'), keep_revisions('release_sites'), keep_revisions('unsuitabilities'),
       keep_revisions('releases'), keep_revisions('released_animals');
