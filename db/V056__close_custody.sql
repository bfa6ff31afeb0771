-- A transfer to somebody who holds under another licence, and kinds that the network may not hold.

ALTER TABLE hand_overs
    -- whose licence it is, where that is not the taker: an organisation's name, never a person's
    ADD COLUMN licence_organisation text,
    ADD COLUMN licence_number       text,
    ADD COLUMN licence_jurisdiction text CHECK (licence_jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    ADD CONSTRAINT another_licence_of_a_hand_over_is_told_whole
        CHECK (num_nonnulls(licence_number, licence_jurisdiction) IN (0, 2)
            AND (licence_organisation IS NULL OR licence_number IS NOT NULL));
ALTER TABLE custody_links
    ADD COLUMN licence_organisation text,
    ADD COLUMN licence_number       text,
    ADD COLUMN licence_jurisdiction text CHECK (licence_jurisdiction ~ '^[A-Z]{2}(-[A-Z0-9]{1,3})?$'),
    ADD CONSTRAINT another_licence_of_a_link_is_told_whole
        CHECK (num_nonnulls(licence_number, licence_jurisdiction) IN (0, 2)
            AND (licence_organisation IS NULL OR licence_number IS NOT NULL));

CREATE INDEX pending_hand_overs ON hand_overs (happened_at, id) WHERE accepted_at IS NULL AND refused_at IS NULL;

-- A kind that the network's holders may not hold, and where it goes instead. Somebody has it in a box all the same: custody
-- is recorded and never refused for it.
CREATE TABLE referrals (
    id              uuid PRIMARY KEY,
    version         integer     NOT NULL DEFAULT 0,
    jurisdiction    text        NOT NULL CHECK (jurisdiction ~ '^([A-Z]{2}(-[A-Z0-9]{1,3})?|network)$'),
    kind            text        NOT NULL CHECK (kind IN ('statute', 'policy', 'advice')),
    taxon_group_id  uuid REFERENCES taxon_groups,
    scientific_name text,
    refer_to        text        NOT NULL,
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
    CONSTRAINT a_networks_referral_is_policy CHECK ((kind = 'policy') = (jurisdiction = 'network')),
    CONSTRAINT a_referral_is_of_a_group_or_of_a_name CHECK (num_nonnulls(taxon_group_id, scientific_name) = 1),
    CONSTRAINT a_referral_ends_after_it_begins CHECK (valid_to > valid_from),
    CONSTRAINT a_referral_is_read_again_later CHECK (review_by > read_on)
);
SELECT keep_revisions('referrals');

INSERT INTO referrals (id, jurisdiction, kind, scientific_name, refer_to, words, source, read_on, review_by, valid_from,
    recorded_at, recorded_by)
SELECT ('01920000-0000-7000-8000-000000056' || id)::uuid, 'AU-VIC', 'statute', named,
    'the wildlife authority of Victoria, which says who may: the reading names nobody',
    'A wildlife rehabilitator''s authorisation excludes ' || told || '.',
    'Wildlife Rehabilitator Authorisation Guide, environment department of Victoria, 30 June 2023. It excludes whales, dolphins,'
        || ' seals, marine turtles, platypus, fish, deer and introduced game birds; that ' || named || ' is among them is from'
        || ' memory. Check your local code and your licensed vet.',
    '2026-11-25', '2027-11-25', '2023-06-30', now(), '01920000-0000-7000-8000-000000000000'
FROM (VALUES
    ('001', 'Ornithorhynchus', 'platypus'),
    ('002', 'Arctocephalus', 'seals'),
    ('003', 'Neophoca', 'seals'),
    ('004', 'Mirounga', 'seals'),
    ('005', 'Hydrurga', 'seals'),
    ('006', 'Lobodon', 'seals'),
    ('007', 'Tursiops', 'dolphins'),
    ('008', 'Delphinus', 'dolphins'),
    ('009', 'Megaptera', 'whales'),
    ('010', 'Eubalaena', 'whales'),
    ('011', 'Balaenoptera', 'whales'),
    ('012', 'Physeter', 'whales'),
    ('013', 'Chelonia', 'marine turtles'),
    ('014', 'Caretta', 'marine turtles'),
    ('015', 'Dermochelys', 'marine turtles'),
    ('016', 'Eretmochelys', 'marine turtles'),
    ('017', 'Lepidochelys', 'marine turtles'),
    ('018', 'Natator', 'marine turtles'),
    ('019', 'Cervidae', 'deer'),
    ('020', 'Cervus', 'deer'),
    ('021', 'Rusa', 'deer'),
    ('022', 'Dama', 'deer'),
    ('023', 'Axis', 'deer'),
    ('024', 'Callipepla', 'introduced game birds'),
    ('025', 'Colinus', 'introduced game birds'),
    ('026', 'Phasianus', 'introduced game birds'),
    ('027', 'Alectoris', 'introduced game birds'),
    ('028', 'Perdix', 'introduced game birds')) AS listed (id, named, told);
